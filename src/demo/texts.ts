// no-unit-test: texts; test/cli/demo.test.ts checks that the settings are right and that every placed picture is there

/** `evengrey.json` of the demo book. */
export const settings = `{
  // The layout places the pages alone; the others are here to be checked too.
  "pictures": ["pictures", "encodings", "faults", "extras"],
  // How the book is printed. "evengrey forecast" shows what else could be chosen.
  "targets": {
    "book": { "process": "silver-halide", "paper": "photo-lustre", "light": "D50" },
    // the same picture in every encoding, for a press that keeps the ink values it is sent
    "edition": { "process": "offset-coated", "route": "inks" }
  },
  "parts": {
    "pages": { "pictures": "pictures/**", "target": "book" },
    "encodings": { "pictures": "encodings/**", "target": "edition" },
    // the first part that names a picture has it
    "inks": { "pictures": "faults/too-much-ink.jpg", "target": "edition" },
    "faults": { "pictures": "faults/**", "target": "book" },
    "extras": { "pictures": "extras/**", "target": "book" }
  },
  // Pictures that are not grey on purpose.
  "intent": {
    "toned": "extras/toned-*",
    "colour": "extras/*-in-colour.jpg",
    "line": "extras/cutting-line.tif"
  },
  "trim": { "width": 240, "height": 200 }
}
`;

/** The layout of the invented book. */
export const layout = `# Winter on Halm

An island with one road, one wood and one lamp that is left on.

![The stones in the bay, before the fog lifted](pictures/01-standing-stones.jpg)

![The sound, an hour later](pictures/02-sound.jpg)

The quarry closed long before anybody thought of taking its picture.

![The old quarry](pictures/03-old-quarry.jpg)

![The keeper, found in the chapel wall](pictures/04-keeper.jpg)

![Sailcloth, drying](pictures/05-sailcloth.jpg)

![The north wood](pictures/06-north-wood.jpg)

![The last window](pictures/07-last-window.jpg)

![Snow fence above the landing](pictures/08-snow-fence.jpg)
`;

export const readme = `# A demo book for Evengrey

"Winter on Halm" is invented, and so is all that is in it: the pictures were drawn by code. Use them as you like.

- \`pictures/\`: the pages, kept as equal red, green and blue, as they should be.
- \`encodings/\`: one picture in six encodings. The same grey in all of them: the same lightness to within about 1 L*, relative to the paper, and softer than the page it is taken from, since equal coloured inks reach no deeper black. Not the same print.
- \`faults/\`: each file has the fault that it is named for; some bring another along. \`see-through.png\` is sound: what is transparent is not judged.
- \`extras/\`: a deliberate tone, a colour picture and line art; \`evengrey.json\` says that they are meant.
- \`book.md\`: the layout.

Try: \`evengrey check .\`, \`evengrey explain residual-chroma\`, \`evengrey forecast encodings/keeper-three-ink.tif\`.
`;
