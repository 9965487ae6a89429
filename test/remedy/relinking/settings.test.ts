import assert from 'node:assert/strict';
import { settingsThatName } from '../../../src/remedy/relinking/settings';
import { temporaryFolder } from '../../book/support/folder';

describe('settings that name a picture whose result is placed', () => {
  const settings = `\uFEFF{
  // the plates
  "pictures": ["plates/a.tif", "plates/*.tif", "plates", "!plates/a.tif"],
  "ignore": "plates/a.tif",
  "intent": { "grey": { "pictures": "**/*.jpg", "reference": "plates/a.tif" } },
  "placements": { "plates/a.tif": { "width": 100 } },
  "spreads": [["plates/a.tif", "plates/b.tif"]],
}`;
  const told = async (replacements: Record<string, string>, text = settings) =>
    (
      await settingsThatName(
        temporaryFolder({ 'evengrey.json': text }),
        new Map(Object.entries(replacements)),
      )
    ).map(({ line, why }) => [line, /^"([^"]+)"/.exec(why)![1]]);

  it('are told with their line, where they do not name the result as well', async () => {
    assert.deepEqual(await told({ 'plates/a.tif': 'plates/a.tif.rgb-neutral.png' }), [
      [3, 'plates/a.tif'],
      [3, 'plates/*.tif'],
      [3, '!plates/a.tif'],
      [5, 'plates/a.tif'],
      [6, 'plates/a.tif'],
      [7, 'plates/a.tif'],
    ]);
    assert.deepEqual(
      (await told({ 'plates/a.tif': 'plates/a.rgb-neutral.tif' })).filter(
        ([, word]) => word === 'plates/*.tif',
      ),
      [],
    );
  });

  it('are none where there are none, or nothing is replaced', async () => {
    assert.deepEqual(await told({}), []);
    assert.deepEqual(await settingsThatName(temporaryFolder(), new Map([['a', 'b']])), []);
  });
});
