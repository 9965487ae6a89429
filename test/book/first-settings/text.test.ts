import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import Ajv from 'ajv';
import { parse } from 'jsonc-parser';
import { firstChoices } from '../../../src/book/first-settings/choices';
import { firstSettings } from '../../../src/book/first-settings/text';
import { loadSettings } from '../../../src/book/settings/load';
import { language } from '../../../src/book/settings/words';
import type { BookFolder, FirstAnswers } from '../../../src/shared/first-settings';
import { temporaryFolder } from '../support/folder';

const valid = new Ajv({ strict: false }).compile(language.settings);
const answers: FirstAnswers = {
  ...{ house: 'Example House', process: 'silver-halide', paper: 'photo-gloss', light: 'LED-B1' },
};
const nothing: BookFolder = {
  ...{ pictures: [], placed: [], layouts: [] },
  known: { line: [], colour: [], toned: [] },
};

/** Loads the text as the settings of a book; every problem fails. */
async function loaded(text: string) {
  assert.equal(valid(parse(text)), true, `${text}\n${JSON.stringify(valid.errors)}`);
  const { settings, problems } = await loadSettings(
    temporaryFolder({ 'evengrey.json': text, 'book.md': '', 'cover.typ': '' }),
  );
  assert.deepEqual(problems, [], text);
  return settings!;
}

describe('the text of first settings', () => {
  it('says what a person chose', async () => {
    const text = firstSettings(answers, nothing);
    const [target] = (await loaded(text)).targets;
    assert.deepEqual(
      [target.process, target.paper, target.light],
      ['silver-halide', 'photo-gloss', 'LED-B1'],
    );
    assert.match(text, /\/\/ Printed by Example House\. What they advise goes before every forecast\./);
  });

  it('loads with every process, paper and light that can be chosen', async () => {
    const { processes, lights } = firstChoices();
    let tried = 0;
    for (const { id: process, papers } of processes)
      for (const { id: paper } of papers)
        for (const { id: light } of lights) {
          const { targets } = await loaded(firstSettings({ house: '', process, paper, light }, nothing));
          assert.deepEqual([targets[0].process, targets[0].paper, targets[0].light], [process, paper, light]);
          tried++;
        }
    assert.ok(tried > 100, `${tried}`);
  });

  it('leaves the process open where nobody knows it, and the line beside it can be taken up as it stands', async () => {
    const text = firstSettings({ ...answers, process: null, paper: null }, nothing);
    assert.deepEqual((await loaded(text)).targets, []);
    const takenUp = text.replace('// "process"', '"process"');
    assert.equal((await loaded(takenUp)).targets[0].process, 'silver-halide');
  });

  it('has the encodings taken up as they stand', async () => {
    const takenUp = firstSettings(answers, nothing).replace('// "encodings"', '"encodings"');
    assert.deepEqual((await loaded(takenUp)).targets[0].encodings, ['single-channel', 'rgb-neutral']);
  });

  it('keeps a name of several lines in its comment', async () => {
    const text = firstSettings({ ...answers, house: ' A House\n  "process": 3, // \u2028*/ ' }, nothing);
    assert.equal((await loaded(text)).targets[0].process, 'silver-halide');
    assert.match(text, /Printed by A House "process": 3, \/\/ \*\/\./);
  });

  it('names the layouts where they place pictures', async () => {
    const pictures = ['a/1.jpg', 'a/2.jpg', 'b/3.jpg'];
    const found = { ...nothing, pictures, placed: pictures.slice(1), layouts: ['book.md', 'cover.typ'] };
    const settings = await loaded(firstSettings(answers, found));
    assert.deepEqual([settings.layouts, settings.pictures], [['book.md', 'cover.typ'], null]);
    assert.match(firstSettings(answers, found), /place: 2 of the 3 in this folder/);
  });

  it('has facing pages named by hand, as they stand', async () => {
    const pictures = ['3.jpg', '1.jpg', '2.jpg'];
    const text = firstSettings(answers, { ...nothing, pictures, placed: pictures, layouts: ['book.md'] });
    assert.deepEqual((await loaded(text)).spreads, []);
    const { spreads, layouts } = await loaded(text.replace('// "spreads"', '"spreads"'));
    assert.deepEqual([spreads, layouts], [[['3.jpg', '1.jpg']], ['book.md']]);
  });

  it('leaves the layouts to themselves where no names were found for them', async () => {
    const found = { ...nothing, pictures: ['1.jpg', '2.jpg'], placed: ['1.jpg'] };
    const text = firstSettings(answers, found);
    assert.equal((await loaded(text)).layouts, null);
    assert.match(text, /place: 1 of the 2 in this folder/);
  });

  it('names the folders of pictures that no layout places, a hard one too', async () => {
    const pictures = ['!new (2)/1.jpg', 'plates/deep/2.jpg', 'plates/3.jpg'];
    const settings = await loaded(firstSettings(answers, { ...nothing, pictures }));
    assert.deepEqual(settings.pictures, ['./!new (2)', 'plates']);
  });

  it('takes the whole folder where pictures lie in it', async () => {
    const settings = await loaded(firstSettings(answers, { ...nothing, pictures: ['1.jpg', 'a/2.jpg'] }));
    assert.equal(settings.pictures, null);
  });

  it('takes one bit for line art, and asks about colour and tone', async () => {
    const known = { line: ['cut.tif'], colour: ['c\n1.jpg'], toned: ['t.jpg'] };
    const text = firstSettings(answers, { ...nothing, pictures: ['cut.tif', 't.jpg'], known });
    const { intents } = await loaded(text);
    assert.deepEqual(
      intents.map(({ intent, pictures }) => [intent, pictures]),
      [['line', ['cut.tif']]],
    );
    assert.match(text, /\/\/ "toned": \["t\.jpg"\]/);
  });

  it('is what stands beside the tests, so that a person has read it', () => {
    const found: BookFolder = {
      pictures: ['pictures/1.jpg', 'pictures/2.jpg', 'pictures/cut.tif'],
      placed: ['pictures/1.jpg', 'pictures/cut.tif'],
      layouts: ['book.md'],
      known: { line: ['pictures/cut.tif'], colour: ['pictures/2.jpg'], toned: [] },
    };
    const golden = path.resolve('test/golden/first-settings.jsonc');
    const text = firstSettings(answers, found);
    if (process.env.UPDATE_GOLDEN) fs.writeFileSync(golden, text);
    assert.equal(text, fs.readFileSync(golden, 'utf8'));
  });
});
