import assert from 'node:assert/strict';
import { judged } from '../support/judged';
import { type PictureOptions, picture, target } from '../support/pictures';

const press = [target('offset-coated', { route: 'inks' })];
const found = (options: PictureOptions) =>
  judged([picture('three-ink', { targets: press, ...options })], 'unbalanced-grey').pictures[0];

/** Straight lines through published triplets of near-neutral greys: 25/19/19, 50/40/40, 75/66/66 (CGATS TR 015). */
function nearNeutral(darkness: number): number[] {
  const steps = [0, 0.25, 0.5, 0.75, 1];
  const line = (values: number[]) => {
    const i = Math.min(3, Math.floor(darkness * 4));
    return values[i] + ((darkness - steps[i]) / 0.25) * (values[i + 1] - values[i]);
  };
  return [line(steps), line([0, 0.19, 0.4, 0.66, 1]), line([0, 0.19, 0.4, 0.66, 1]), 0];
}

const equal = (darkness: number) => [0.85 * darkness, 0.85 * darkness, 0.85 * darkness, 0];

describe('unbalanced-grey', () => {
  describe('passes', () => {
    it('the published near-neutral triplets', () => assert.equal(found({ inks: nearNeutral }).length, 0));
    it('black ink alone, and R = G = B', () => {
      const book = [picture('black-only', { targets: press }), picture('rgb-neutral', { targets: press })];
      assert.deepEqual(judged(book, 'unbalanced-grey').named, []);
    });
    it('a mixture of inks that is meant as a tone', () =>
      assert.equal(found({ inks: equal, intent: 'toned' }).length, 0));
    it('inks that never reach the press', () =>
      assert.equal(
        found({ inks: equal, targets: [target('offset-coated', { route: 'black-plate' })] }).length,
        0,
      ));
  });
  describe('fails', () => {
    it('equal cyan, magenta and yellow, with the direction that the forecast names', () => {
      const [finding] = found({ inks: equal });
      assert.equal(finding.severity, 'warning');
      assert.match(finding.message, /with a cast, mostly warm, in nearly every order on coated offset: its/);
      assert.equal(finding.data.basis, 'data');
      assert.match(finding.data.save as string, /^(single-channel|rgb-neutral|black-only)/);
      // FOGRA51 52/+6.5/+2.6, FOGRA39 53/+6.5/+4.3, CRPC6 53/+6.2/+2.9 at 50 % (characterisation data): about 7 in all
      const size = finding.data.size as number;
      assert.ok(size > 5 && size < 8, `size ${size}`);
    });
    it('inks that a photographic process turns into R, G, B, as the guess that it is', () => {
      const [finding] = found({ inks: equal, targets: [target('silver-halide')] });
      assert.match(
        finding.message,
        /on silver halide.*This stands on a guess about what the print house does with inks/,
      );
      assert.doesNotMatch(found({ inks: equal })[0].message, /guess/);
    });
    it('many alike as one finding about the book, with the range of their casts', () => {
      const strength = (most: number) => (darkness: number) => [most, most, most, 0].map(v => v * darkness);
      const book = [0.85, 0.7, 0.6, 0.5].map(most =>
        picture('three-ink', { targets: press, inks: strength(most) }),
      );
      const { named, pictures, book: about } = judged(book, 'unbalanced-grey');
      assert.deepEqual([named.length, pictures.flat().length, about.length], [0, 0, 1]);
      const { message, data } = about[0];
      assert.match(
        message,
        /^By the forecast 4 pictures print with a cast, .* warm, .* on coated offset \(.* 1 more\): their/,
      );
      const [, least, most] = /by about (\d\.\d) to (\d\.\d) in a\*/.exec(message)!;
      assert.deepEqual([Number(least) < Number(most), data.pictures], [true, book.map(({ path }) => path)]);
      assert.match(message, /Save them as .*separate them again/);
      const few = judged(book.slice(1), 'unbalanced-grey');
      assert.deepEqual([few.pictures.flat().length, few.book.length], [3, 0], 'a few are told one by one');
    });
    it('a cast of equal inks under black, from the limit of the settings on', () => {
      const inks = (darkness: number) => [0.2 * darkness, 0.2 * darkness, 0.2 * darkness, 0.8 * darkness];
      const book = [picture('four-channel', { inks, targets: press })];
      const at = (limit: number) =>
        judged(book, 'unbalanced-grey', { 'unbalanced-grey': ['warning', { limit }] });
      const size = at(0.5).pictures[0][0].data.size as number;
      assert.equal(at(size + 0.01).named.length, 0);
    });
  });
});
