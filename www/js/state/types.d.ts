// What the state is made of. Numbers of paints are those of the shelf at hand.

import type { Studio as Made } from "../../pkg/studio.js";
import type { Advice, CoreAnswers, Lesson, Progress, StudioAnswers } from "./answers.js";

type Half = typeof import("../../pkg/studio.js");

/** The half of the core for the page. */
export type Core = Omit<Half, "Studio" | keyof CoreAnswers> &
  CoreAnswers & { Studio: new (...how: ConstructorParameters<typeof Made>) => Studio };

/** One paper in one light, and every paint in it. */
export type Studio = Omit<Made, keyof StudioAnswers> & StudioAnswers;

/** A paint's number, and how many parts of it. */
export type Part = [paint: number, count: number];

/** A paper by its place among `PAPERS`, or the painter's own by its L*, a*, b*. */
export interface Paper {
  stock: number;
  own: number[] | null;
}

/** A kept mix. */
export interface Puddle {
  parts: Part[];
  /** 1 is masstone; down to 1/32. */
  load: number;
}

export interface Colour {
  /** L*, a*, b*. */
  lab: number[];
  weight: number;
}

/** Colours that a painter wants to reach. */
export interface Place {
  name: string;
  colours: Colour[];
}

/** What a teacher asks of a class. */
export interface Brief {
  note: string;
  tasks: string[];
}

/** A kit as a link carries it, without its own paints. */
export interface KitContent {
  title: string;
  /** Pans that the tin holds, 1 to 48. */
  capacity: number;
  stock: number;
  /** L*, a*, b* of the painter's own paper. */
  paper: number[] | null;
  /** One paint each, or two side by side. */
  pans: number[][];
  puddles: Puddle[];
  places: Place[];
  brief?: Brief | null;
}

export interface Kit extends KitContent {
  id: string;
}

/** A paint of the shelf, as the core tells it. */
export interface Paint {
  number: number;
  key: string;
  code: string;
  name: string;
  aliases: string[];
  family: string;
  hue: string;
  /** Ratings of 0 to 4, nothing where they were not measured. */
  transparency: number | null | undefined;
  staining: number | null | undefined;
  granulation: number | null | undefined;
  /** Blue Wool grades of 1 to 8. */
  lightfastTint: number | null | undefined;
  lightfastMasstone: number | null | undefined;
  caution: string;
  /** How much a volume of it does in a mix, where 1 is the average paint's. */
  strength: number;
  earth: boolean;
  /** How well its spectrum is known: `measured`, `estimated` and so on. */
  tier: string;
  source: string;
}

export interface Shelf {
  all: Paint[];
  get(number: number): Paint | undefined;
  /** The paint of a number that is on the shelf. */
  paint(number: number): Paint;
  find(key: string): Paint | undefined;
  fill(paints: Paint[]): void;
}

/** One of the painter's own paints: a mixture of `parts`, or swatches on a `paper`. */
export interface OwnPaint {
  id: string;
  name: string;
  code: string;
  caution: string;
  /** Transparency, staining and granulation of 0 to 4, lightfastness of 1 to 8; nothing where it is not rated. */
  ratings: (number | null)[];
  parts: Part[];
  paper: Paper;
  /** L*, a*, b* or 36 reflectances. */
  masstone: number[];
  wash: number[];
  washLoad: number;
}

/** An own paint by its number within this visit. */
export type Own = [number: number, paint: OwnPaint];

/** Absorption and scattering at 36 wavelengths. */
export interface Film {
  k: ArrayLike<number>;
  s: ArrayLike<number>;
  strength: number;
}

/** What the swatches of a paint are, and their film. */
export type KeptFilm = [swatches: string, film: Film];

/** What records taught of a paint. */
export interface Learned extends Film {
  number: number;
  left: number[];
}

/** What was painted and what was seen of it. */
export interface Record {
  id: string;
  parts: Part[];
  load: number;
  /** L*, a*, b* or 36 reflectances. */
  seen: number[];
  paper: Paper;
  date: string;
  note: string;
}

/** An end of a path. */
export interface End {
  parts: Part[];
  /** The place of the wheel that it was asked for by, and how far off it is. */
  asked?: { place?: number[]; off: number };
}

/** Both ends as the core asks for them, and how they are laid: mixed, A over B or B over A. */
export interface Pair {
  ends: Part[][];
  laid: number;
}

/** The colour to be matched. */
export interface Target {
  /** L*, a*, b*. */
  lab: number[];
  from: string;
}

/** What is kept as the painter's work. */
export interface Work {
  /** The kit in hand. */
  kit: Kit;
  others: Kit[];
  own: Own[];
  records: Record[];
  /** Paints that records teach nothing of. */
  held: number[];
  /** Paints that are marked as owned. */
  owned: number[];
  /** Tasks that are done. */
  ticked: string[];
}

/** How the page is looked at. */
export interface Looks {
  ends: (End | null)[];
  /** Which end is filled next. */
  next: number;
  laid: number;
  /** Part of B in the mix, 0 to 1. */
  share: number;
  load: number;
  light: number;
  /** Whether paint is shown as it looks before it dries. */
  wet: boolean;
  showShelf: boolean;
  ribbon: boolean;
  reach: boolean;
  pins: { pair: Pair; load: number }[];
  pinnedKit: number[] | null;
  /** A paint on the wheel, 0 for none. */
  cursor: number;
  cross: number[] | null;
  target: Target | null;
  /** Whether the target is picked on the wheel. */
  picking: boolean;
  dim: boolean | null;
  editing: boolean;
  welcome: boolean | null;
  learning: boolean;
}

/** All that the page shows, before what follows from it. */
export interface Plain extends Work, Looks {
  films: KeptFilm[];
  learned: Learned[];
  /** A kit that came by a link, and its own paints. */
  guest: KitContent | null;
  visiting: Own[];
  /** What the worker made of the records. */
  lesson: Lesson | null;
}

export interface State extends Plain {
  studio: Studio;
}

/** What changes in a state. */
export type Patch = Partial<State>;

/** Where a change comes from: a step that is taken back, or another tab, and then which item it is. */
export interface How {
  from?: "history" | "elsewhere";
  key?: string;
}

export type View = (state: State, changed: Set<string>, before: State, how: How) => void;

export interface Store {
  get(): State;
  change(patch: Patch | ((state: State) => Patch), how?: How): void;
  set(patch: Patch | ((state: State) => Patch), how?: How): boolean;
  subscribe(view: View): () => boolean;
}

/** The number of an own paint within this visit, by its id. */
export type NumberOf = (id: string) => number;

/** What reading and judging the state asks for. */
export interface Context {
  core: Core;
  shelf: Shelf;
  isBuiltIn: (number: number) => boolean;
  numberOf: NumberOf;
  learn: (paints: OwnPaint[], films: KeptFilm[]) => Promise<KeptFilm[]>;
}

/** Asks the worker: see `adviser.js`. */
export interface Ask {
  <Verb extends keyof Advice>(verb: Verb, question: object): Promise<Advice[Verb]>;
  /** Answers at once; `tell` hears how far it is. */
  long<Verb extends keyof Advice>(
    verb: Verb,
    question: object,
    tell?: (told: Progress) => void,
  ): { answer: Promise<Advice[Verb]>; cancel: () => void };
}

/** Makes an end the next one of the path; the other is next then. */
export type Choose = (end: End) => void;

/** Paints as they are kept: by number, or `o` and the id of an own one. */
export type Ref = number | string;

export interface Refs {
  refOf: (number: number) => Ref;
  numberOf: (ref: Ref) => number | undefined;
}

/** One version of a kept item; `value` is null where it was thrown away. */
export interface Version {
  at: number;
  by: string;
  seen: { [tab: string]: number };
  value: any;
}

/** Hears of what cannot be read. */
export type Fault = (key: string, text: string, why: string) => void;

/** What a kit file holds. */
export interface Found {
  /** Each numbers its own paints by itself. */
  kits: Linked[];
  own: Own[];
  records: Omit<Record, "id">[];
  held: number[];
  owned: number[];
  faults: string[];
}

/** What storage held at the start, by keys of entries: their versions, their texts, and the items that are kept as they are in the state. */
export interface Known {
  versions: Map<string, Version>;
  texts: Map<string, string>;
  kept: Map<string, any>;
}

/** Says what happened while keeping: `denied`, `full`, `beside` or `elsewhere`, and to what. */
export type Tell = (what: "denied" | "full" | "beside" | "elsewhere", name?: string) => void;

export interface Keeping {
  writeAll(): boolean;
  stop(): void;
}

/** What a start found. */
export interface Read extends Known {
  state: State;
  faults: { key: string; text: string; why: string }[];
  /** Keys of what was thrown away long ago. */
  stale: string[];
  isFirst: boolean;
  hasOld: boolean;
}

/** A kit as a link or a file brings it, with the own paints that it holds. */
export interface Linked extends KitContent {
  own: Own[];
}

/** Another number for a paint. */
export type Renumber = (paint: number) => number;
