import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { followNames, retired } from '../../../src/remedy/relinking/follow';
import { temporaryFolder } from '../../book/support/folder';

const A = 'plates/a.tif';
const RESULT = 'plates/a.tif.rgb-neutral.png';
const replacements = new Map([[A, RESULT]]);
const placed = new Map([[RESULT, 'book.md:3']]);

/** What becomes of a text, and what is told. */
async function followed(text: string | Buffer, places: ReadonlyMap<string, string> = placed, dryRun = false) {
  const root = temporaryFolder({ 'evengrey.json': text });
  const { settings, problems } = await followNames({ root, replacements, places, dryRun });
  return {
    text: fs.readFileSync(path.join(root, 'evengrey.json'), 'utf8'),
    lines: settings.map(({ line, column, from, to }) => `${line}:${column} ${from} -> ${to}`),
    told: problems.map(({ line, why }) => `${line} ${why}`),
  };
}

describe('settings that name a picture whose result is placed', () => {
  const settings = `\uFEFF{ // the plates
  "pictures": ["plates/a.tif", "plates", "!./plates/a.tif"],
  "ignore": "plates/a.tif",
  "intent": { "grey": { "pictures": "plates/**", "reference": "plates\\/a.tif" } },
  "parts": { "plates/a.tif": { "pictures": "plates/a.tif", "target": "plates/a.tif" } },
  "placements": { "plates/a.tif": { "width": 100 } },\r
  "spreads": [["plates/b.tif", "plates/a.tif"]],
}`;

  it('name the result, and not one byte else is changed', async () => {
    const { text, lines, told } = await followed(settings);
    assert.deepEqual(lines, [
      `2:17 ${A} -> ${RESULT}`,
      `2:43 !./${A} -> !./${RESULT}`,
      `3:14 ${A} -> ${RESULT}`,
      `4:64 plates\\/a.tif -> ${RESULT}`,
      `5:45 ${A} -> ${RESULT}`,
      `6:20 ${A} -> ${RESULT}`,
      `7:33 ${A} -> ${RESULT}`,
    ]);
    assert.deepEqual(told, []);
    assert.equal(
      text,
      settings
        .replace(
          /(?<="pictures": \[?"|"!.\/|"ignore": "|"placements": \{ "|b.tif", ")plates\/a\.tif/g,
          RESULT,
        )
        .replace('plates\\/a.tif', RESULT),
    );
  });

  it('are not written in a dry run, which says the same', async () => {
    const dry = await followed(settings, placed, true);
    assert.equal(dry.text, settings);
    assert.deepEqual(dry.lines, (await followed(settings)).lines);
  });

  it('stay and are told where they are patterns that do not name the result', async () => {
    const text =
      '{\n"pictures": ["plates/*.tif"],\n"intent": { "grey": ["plates/*.tif", "plates/a.tif*"] }\n}';
    const { told, lines, text: after } = await followed(text);
    assert.deepEqual(told, [
      `2 "plates/*.tif" names ${A} and not ${RESULT}: what is said here does not hold for that. Add "${RESULT}".`,
    ]);
    assert.deepEqual([lines, after], [[], text]);
  });

  it('are told where they leave the result out of the book, and its picture not', async () => {
    const out = `"*.png" leaves ${RESULT} out of the book, which book.md:3 places: it would be printed, and never checked. Add "!${RESULT}".`;
    const told = async (ignore: string[]) =>
      (await followed(`{ "ignore":\n${JSON.stringify(ignore)} }`)).told.map(why =>
        why.replace('**/*.png', '*.png'),
      );
    assert.deepEqual(await told(['drafts', '**/*.png']), [`2 ${out}`]);
    assert.deepEqual(await told(['**/*.png', `!${RESULT}`]), []);
    assert.deepEqual(await told(['plates', '!plates/a.tif']), [], 'the exception goes with the picture');
    assert.deepEqual(await told(['plates']), []);
  });

  it('stay where the result is named beside it already', async () => {
    const text = `{ "spreads": [["plates/a.tif", "${RESULT}"]], "pictures": ["*.tif", "${RESULT}"] }`;
    assert.deepEqual(await followed(text), { text, lines: [], told: [] });
  });

  it('name a result once where a picture and a link to it are named', async () => {
    const root = temporaryFolder({
      'evengrey.json': '{ "placements": { "plates/a.tif": {}, "link.tif": {} }, "pictures": ["link.tif"] }',
    });
    const both = new Map([...replacements, ['link.tif', RESULT]]);
    await followNames({ root, replacements: both, places: placed, dryRun: false });
    assert.equal(
      fs.readFileSync(path.join(root, 'evengrey.json'), 'utf8'),
      `{ "placements": { "${RESULT}": {}, "link.tif": {} }, "pictures": ["${RESULT}"] }`,
    );
  });

  it('are followed in a part whatever it is called, and its target is no picture', async () => {
    const { text } = await followed(
      '{ "parts": { "target": { "pictures": ["plates/a.tif"], "target": "plates/a.tif" }, "b": "plates/a.tif" } }',
    );
    assert.equal(
      text,
      `{ "parts": { "target": { "pictures": ["${RESULT}"], "target": "plates/a.tif" }, "b": "${RESULT}" } }`,
    );
  });

  it('stay and are told where other lines still place the picture', async () => {
    const text = '{ "spreads": [["plates/a.tif"]] }';
    const { told, lines, text: after } = await followed(text, new Map([...placed, [A, 'page.html:2']]));
    assert.deepEqual(told, [
      `1 "${A}" names the picture, which page.html:2 still places, and not its result, which book.md:3 places: what is said here does not hold for that. Add "${RESULT}".`,
    ]);
    assert.deepEqual([lines, after], [[], text]);
  });

  it('are nobody’s business where no layout places the result', async () => {
    const nothing = { text: settings, lines: [], told: [] };
    assert.deepEqual(await followed(settings, new Map()), nothing);
    assert.deepEqual(await followed(settings, new Map([[A, 'page.html:2']])), nothing);
  });

  it('are left alone where the file is protected, which is told, and none where there is no file', async () => {
    const root = temporaryFolder({ 'evengrey.json': settings });
    fs.chmodSync(path.join(root, 'evengrey.json'), 0o444);
    const { problems } = await followNames({ root, replacements, places: placed, dryRun: false });
    assert.deepEqual(problems, [{ file: 'evengrey.json', line: null, why: 'It is write-protected.' }]);
    const none = { root: temporaryFolder(), replacements, places: placed, dryRun: false };
    assert.deepEqual(await followNames(none), { settings: [], problems: [] });
  });
});

describe('pictures that a book has no more', () => {
  const gone = (places: [string, string][], pictures: string[] | null = null) =>
    retired({ replacements, places: new Map(places) }, pictures);

  it('are those whose results are placed and that are named nowhere', () => {
    assert.deepEqual(gone([[RESULT, 'book.md:3']]), [A]);
    assert.deepEqual(gone([[RESULT, 'book.md:3']], [A]), [A], 'the name goes with the layouts');
    assert.deepEqual(gone([[RESULT, 'book.md:3']], ['plates/*.tif']), []);
    assert.deepEqual(
      gone([
        [RESULT, 'book.md:3'],
        [A, 'page.html:2'],
      ]),
      [],
    );
    assert.deepEqual(gone([]), []);
  });
});
