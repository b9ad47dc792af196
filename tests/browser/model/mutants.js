// Faults that the page had or might have, each put into one of its modules: the sequences must find every one. `verbs` are drawn more often,
// so that few sequences do.

export const MUTANTS = [
  { name: "both ends together may hold more paints than a mix", file: "sound.js", find: "if (paints.size > MOST_MIXED)", replace: "if (false)", verbs: ["chooseMix"] },
  { name: "names of a guest's paints are not minded", file: "sound.js", find: "name: freeName(paint.name, named)", replace: "name: paint.name", verbs: ["openLink", "makeOwn", "packGuest", "pack"] },
  { name: "a start does not name its own paints apart", file: "start.js", find: "name: freeName(paint.name, state.own)", replace: "name: `${paint.name}`.slice(0, 1)", verbs: ["makeOwn", "reload"] },
  { name: "this tab's version always wins", file: "versions.js", find: "if (knew(theirs, mine)) return { winner: theirs, loser: null, isNew: false };", replace: "", verbs: ["retitle", "pack"] },
  { name: "the other tab's version always wins, and this one's is forgotten", file: "versions.js", find: "const isLost = ", replace: "const isLost = false && ", verbs: ["both"] },
  { name: "a tab does not hear the other", file: "keeping.js", find: `on(window, "storage", (event) => storage.heard(event, hear));`, replace: "", verbs: ["record"] },
  { name: "a write that failed counts as done", file: "keeping.js", find: "    if (fault) return false;\n", replace: "", verbs: ["full"] },
  { name: "a paint goes before what refers to it", file: "keeping.js", find: `(isWhole || kindOf(key) !== "own")`, replace: "true", verbs: ["makeOwn", "pack", "full", "copyKit"] },
  { name: "a tab takes away what is in hand in another", file: "keeping.js", find: "if (!inHand && !inUse) return", replace: "if (!inUse) return", verbs: ["copyKit", "takeKit", "throwKit"] },
  { name: "looks are not kept as the page is closed", file: "keeping.js", find: "    writeLooks();\n    quit();", replace: "    quit();", verbs: ["choosePaint", "reload"] },
  { name: "paints of a guest's kit that are in use leave with it", file: "sound.js", find: "(needed.has(number) ? stays : rest)", replace: "rest", verbs: ["openLink", "pack", "keepMine"] },
  { name: "what refers to a paint that is gone stays", file: "sound.js", find: "...resolved(state, isKnown, (key) => paintsChanged || changed.has(key))", replace: "", verbs: ["makeOwn", "pack", "dropOwn"] },
  { name: "the shared kit replaces the one in hand", file: "guest.js", find: `...addNamed(state, guest, "Shared kit", shelf)`, replace: `kit: { ...guest, id: state.kit.id }`, verbs: ["openLink", "packGuest"] },
  { name: "the demo takes room", file: "kits.js", find: "filter((kit) => !isUntouchedDemo(kit, shelf))", replace: "slice()", verbs: ["openFile"] },
  { name: "records are not known again", file: "records.js", find: "const fresh = newOnes(more, records);", replace: "const fresh = more;", verbs: ["record", "exportLog"] },
  { name: "undo forgets own paints", file: "history.js", find: `if (entry[from][key] === entry[to][key]) continue;`, replace: `if (key === "own") continue;`, verbs: ["makeOwn"] },
];
