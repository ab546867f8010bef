import type { BadBook } from "./bad-book.ts";

/** Texts that are not YAML, or not the YAML of one book. */
export const badYaml: readonly BadBook[] = [
  {
    wrong: "a tab as indentation",
    edits: [["\n  type: Pipit 1", "\n▶\ttype: Pipit 1"]],
    says: ["expected spaces, found a tab; indent with spaces only"],
  },
  {
    wrong: "a line indented too far",
    edits: [["\n  type: Pipit 1", "\n   ▶type: Pipit 1"]],
    says: [
      "expected a line that is indented like the others of its block, found one that is indented further, and so belongs to the value above; line it up with its neighbours",
    ],
  },
  {
    wrong: "a line indented too little",
    edits: [["\n  description: small", "\n ▶description: small"]],
    says: [
      "expected a line that is indented like the others of its block, found one that is not; line it up with its neighbours",
    ],
  },
  {
    wrong: "a quote that is not closed",
    edits: [["type: Pipit 1", 'type: "Pipit 1▶']],
    says: ["expected a closing quote, found none; close the text that the quote before opened"],
  },
  {
    wrong: "a bracket that is not closed",
    edits: [["frames: [0.9]\n  ", "frames: [0.9\n  ▶"]],
    says: [
      "expected a closing bracket, ] or }, found none before the end of its block; close the bracket that is open above",
    ],
  },
  {
    wrong: "a bracket too many",
    edits: [["frames: [0.9]\n", "frames: [0.9]▶]\n"]],
    says: [
      'expected the end of what was opened before, or a comma, found "]"; look just before it for a bracket, quote or comma too many or too few',
    ],
  },
  {
    wrong: "a missing comma",
    edits: [["[1.0, 0.4, 1.8, 1.0]", "[1.0, 0.4 ▶[1.8, 1.0]"]],
    says: [
      "expected YAML that can be read, found text of which the YAML reader says: missing , or : between flow sequence items",
    ],
  },
  {
    wrong: "a missing opening bracket",
    edits: [["tank: [0.9, 3.5]", "tank: ▶0.9, 3.5]"]],
    says: ['geometry.wing.tank: expected a list, found "0.9, 3.5]"; put it in brackets: [0.9, 3.5]'],
  },
  {
    wrong: "a second colon",
    edits: [["title: Read the dipstick", "title: ▶Read: the dipstick"]],
    says: [
      'expected one key and one value on a line, found a second colon; put text that holds a colon and a space in quotes: "like: this"',
    ],
  },
  {
    wrong: "no space after a colon",
    edits: [["    method: measure\n    shouldBe: 3.0 bar", "    ▶method:measure\n    shouldBe: 3.0 bar"]],
    says: [
      "expected a key, a colon and a space, found a line that is neither a key nor the end of a value; write `key: value` with a space after the colon, or indent the line",
    ],
  },
  {
    wrong: "a reserved character",
    edits: [["at: oil\n", "at: ▶@oil\n"]],
    says: [
      "expected text that starts with a letter or a figure, found text that starts with @; put the text in quotes",
    ],
  },
  {
    wrong: "an unknown escape",
    edits: [["how: Turn the lamp along the tread.", 'how: "Turn ▶\\q"']],
    says: [
      "expected an escape that YAML knows, such as \\n, found \\q; write \\\\ for a backslash, or use single quotes",
    ],
  },
  {
    wrong: "two documents",
    edits: [["\nequipment:", "\n▶---\nequipment:"]],
    says: ["expected one book in a file, found a second document, after `---`; put it in a file of its own"],
  },
  {
    wrong: "a tag",
    edits: [["engine: piston", "engine: ▶!engine piston"]],
    says: ["expected a plain value, found a tag, which starts with an exclamation mark; leave out the tag"],
  },
  {
    wrong: "a list as a key",
    edits: [["  seats: 4", "  ? ▶[seats]\n  : 4"]],
    says: ["expected text as a key, found a list or keys and values as a key"],
  },
  {
    wrong: "a key twice",
    edits: [["  seats: 4", "  seats: 4\n  ▶seats: 6"]],
    says: ["aircraft.seats: expected each key once, found `seats` a second time; keep the one that is right"],
  },
  {
    wrong: "an alias of nothing",
    edits: [["engine: piston", "engine: ▶*engine"]],
    says: [
      "aircraft.engine: expected the name of an anchor that is complete before this line, found *engine; mark the value to repeat with &engine",
    ],
  },
  {
    wrong: "an alias inside its own anchor",
    edits: [["windows: [[2.6, 3.2]]", "windows: &w [▶*w]"]],
    says: [
      "geometry.windows[0]: expected the name of an anchor that is complete before this line, found *w; write the value out",
    ],
  },
];
