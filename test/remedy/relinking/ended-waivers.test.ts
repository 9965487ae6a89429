import assert from 'node:assert/strict';
import { endedWaivers } from '../../../src/remedy/relinking/ended-waivers';
import { temporaryFolder } from '../../book/support/folder';
import { sha } from '../book-support';

describe('waivers of pictures whose results take their place', () => {
  const waiver = (rule: string, picture: string | null, ...content: string[]) => ({
    ...{ rule, picture, value: {} },
    content: content.map(sha),
  });
  const files = {
    '.evengrey-waivers.json': JSON.stringify({
      waivers: [
        waiver('residual-chroma', 'a.jpg', 'a'),
        waiver('mixed-encodings', null, 'a', 'b'),
        waiver('residual-chroma', 'c.jpg', 'c'),
      ],
    }),
  };

  it('are told by rule and picture, with what prunes them', async () => {
    const root = temporaryFolder(files);
    assert.equal(
      await endedWaivers(root, [sha('a')]),
      '2 waivers of .evengrey-waivers.json are of pictures whose results take their place: residual-chroma on a.jpg and mixed-encodings. The results are judged anew, so they waive nothing then. "evengrey check --waive" takes out what is stale; after --undo they hold again.',
    );
    assert.match(
      (await endedWaivers(root, [sha('c')]))!,
      /^1 waiver .* is of.*so it waives nothing.*it holds again/,
    );
  });

  it('are none where nothing is replaced, or nothing was waived', async () => {
    const root = temporaryFolder(files);
    assert.equal(await endedWaivers(root, []), null);
    assert.equal(await endedWaivers(root, [sha('d')]), null);
    assert.equal(await endedWaivers(temporaryFolder(), [sha('a')]), null);
  });
});
