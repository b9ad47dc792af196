// What the core answers: plain objects, as `crate/web` makes them. Errors and differences are CIEDE2000, shares and parts
// of a whole 0 to 1, a load 1 for masstone.

import type { Film, KitContent, Own, OwnPaint, Part, Record } from "./types.js";

/** A colour as it is shown: L*, C* and h in degrees, and its name. */
export interface Swatch {
  css: string;
  /** Whether the display can show it. */
  exact: boolean;
  lightness: number;
  chroma: number;
  hue: number;
  words: string;
}

/** A place on a path. */
export interface Mix {
  /** Share of B. */
  share: number;
  /** Whole parts of A and B. */
  parts: [number, number];
  recipe: Part[];
  swatch: Swatch;
  expected: number;
  texture: string;
}

/** Where a path comes closest to neutral. */
export interface Crossing {
  mix: Mix;
  kind: "pure" | "near" | "dull" | "none";
  lean: string;
}

/** One way to lay the paints of a mix, and how it differs from the mix. */
export interface Way {
  swatch: Swatch;
  difference: string;
}

/** A recipe that matches a mix in daylight and parts from it in another light. */
export interface Shift {
  light: string;
  parts: Part[];
  load: number;
  there: number;
}

/** What neutralises a paint, or shades it, at a ratio. */
export interface Partner {
  paint: number;
  parts: [number, number];
  share: number;
  swatch: Swatch;
}

export interface Neutral extends Partner {
  lean: string;
  warmth: string;
  /** L* of the darkest mix. */
  dark: number;
}

export interface Shading extends Partner {
  /** L* that it takes away, and degrees by which it turns the hue. */
  drop: number;
  drift: number;
}

/** The darkest mix of a hue; no swatch where there is none. */
export interface Dark {
  name: string;
  swatch: Swatch | null | undefined;
  parts: Part[];
}

/** The studio's answers, which its own types leave open. */
export interface StudioAnswers {
  colour(lab: Float32Array): Swatch;
  colour_space(): PredefinedColorSpace;
  crossing(pair: unknown, load: number): Crossing;
  darks(paints: Uint16Array | number[]): Dark[];
  fade(pair: unknown, share: number, loads: Float32Array): string[];
  mix(pair: unknown, share: number, load: number): Mix;
  nearest_recipe(
    paints: Uint16Array | number[],
    x: number,
    y: number,
    load: number,
  ): { parts: Part[]; off: number } | null | undefined;
  partners(parts: Part[], load: number): { neutral: Neutral[]; shading: Shading[] };
  ramp(pair: unknown, load: number, count: number): string[];
  sheet(pair: unknown, shares: Float32Array, loads: Float32Array): Swatch[];
  shift(pair: unknown, share: number, load: number, paints: Uint16Array | number[]): Shift | null | undefined;
  swatch(parts: Part[], load: number): Swatch;
  ways(pair: unknown, share: number, load: number): Way[];
}

/** What the report says of a kit; pairs of parts are of colours that are reached closely, and nearly. */
export interface Report {
  reached: [close: number, near: number];
  gaps: { reach: number; hues: string[] }[];
  darks: ReportedDark[];
  neutrals: { paints: number[]; parts: Part[]; lightness: number; chroma: number; lean: string; warm: boolean }[];
  worths: Worth[];
  duplicates: { paints: number[]; error: number }[];
  leastLightfast: [paint: number, grade: number] | null | undefined;
}

export interface ReportedDark {
  hue: string;
  parts: Part[];
  swatch: Swatch | null | undefined;
  /** The paint that would take it lower, and the L* it would have. */
  with: [paint: number, lightness: number] | null | undefined;
}

/** What a paint adds to the rest of its kit. */
export interface Worth {
  paint: number;
  lost: [close: number, near: number];
  /** Hues of which it makes the darkest. */
  darks: string[];
  /** `of` is the paint that it greys. */
  roles: { name: string; of: number | null | undefined }[];
  idle: boolean;
}

/** What a paint would bring to a kit or a place. */
export interface Candidate {
  paint: number;
  gain: number;
}

/** What stands in for a paint, and how far it is off alone and in mixes. */
export interface Substitute {
  parts: Part[];
  alone: number;
  mixed: number;
}

/** A recipe for a colour. */
export interface Match {
  parts: Part[];
  load: number;
  swatch: Swatch;
  error: number;
  doubt: number;
}

export interface Matches {
  matches: Match[];
  /** What keeps every recipe from being exact. */
  shortfall: string | null | undefined;
  /** The light in which the nearest recipe may differ. */
  light: string | null | undefined;
}

export interface Progress {
  done: number;
  best?: number;
  finished: boolean;
}

/** A kit that was chosen: its cost and the least that is proven, both as parts missed. */
export interface Choice {
  reasons: Reason[];
  cost: number;
  bound: number;
  exact: boolean;
}

/** Why a paint is in a chosen kit: what is lost without it, or that it was asked for. */
export interface Reason {
  paint: number;
  lost: number;
  required: boolean;
}

/** What records taught. */
export interface Lesson {
  learned: { number: number; strength: number; was: number; left: [number, number]; k: number[]; s: number[] }[];
  /** How far off each record is predicted before, after, and without itself; and how much it is believed. */
  records: { before: number; after: number; without: number; believed: number }[];
  now: number;
  recorded: number | null | undefined;
  plan: Step[];
}

/** A swatch worth painting, and the expected error once it is recorded. */
export interface Step {
  parts: Part[];
  load: number;
  after: number;
}

/** A log as it was read; `unsure` is a date that could be of two days, where the file does not tell. */
export interface ReadLog {
  found: Omit<Record, "id">[];
  faults: string[];
  unsure: { written: string; dayFirst: string; monthFirst: string } | null | undefined;
}

/** What the worker answers, by the verb it is asked with: see `core/advice.js`. */
export interface Advice {
  shelf: void;
  films: Film[];
  learn: Lesson;
  samples: { found: { name: string; seen: number[] }[]; faults: string[] };
  writeLog: string;
  readLog: ReadLog;
  report: Report;
  next: Candidate[];
  match: Matches;
  nearest: Match[];
  nextForPlace: Candidate[];
  print: string[];
  printPdf: Uint8Array<ArrayBuffer>;
  qr: string;
  cluster: { lab: number[]; weight: number }[];
  study: { colours: Uint8Array; greys: Uint8Array };
  choose: Choice | null;
  substitutes: [paint: number, found: Substitute[]][];
}

/** A kit as a link brings it. */
export type Decoded = KitContent & { own: Own[] };

/** The core's answers that its own types leave open. */
export interface CoreAnswers {
  sample(rgba: ImageDataArray, width: number, x: number, y: number, radius: number): Float32Array;
  white_balance(
    rgba: ImageDataArray,
    width: number,
    x: number,
    y: number,
    radius: number,
    lightness: number,
  ): Uint8Array;
  compare(colour: Float32Array, other: Float32Array): { error: number; words: string };
  decode_kit(text: string): Decoded;
  read_own(paint: unknown): OwnPaint;
  read_record(record: unknown): Omit<Record, "id">;
}
