import { type CSSToken, TokenType } from '@csstools/css-tokenizer';
import { lengthOf, units } from '../length';
import type { Mapped } from '../mapped';
import { type Draft, urlDraft } from '../reference';
import type { LayoutSize, Writing } from '../types';
import { atRuleOf, type Block, blocksOf } from './declarations';
import { cssUnescaped } from './unescaped';

/** Functions whose strings are pictures. */
const PICTURES = new Set(['url', 'src', 'image-set', '-webkit-image-set', 'image', 'cross-fade']);

/**
 * The pictures of a style sheet or of a style attribute. `outer`: how the text round the style is written.
 * `@import` and fonts place none.
 */
export function cssDrafts(css: Mapped, outer: readonly Writing[] = []): Draft[] {
  return blocksOf(css.text)
    .filter(block => atRuleOf(block) !== 'font-face')
    .flatMap(block =>
      block.declarations.flatMap(({ name, layers }) =>
        layers.flatMap((layer, at) => {
          const size = /^background(-image)?$/.test(name) ? backgroundSize(block, layer, at) : null;
          return picturesIn(layer, css).flatMap(
            ({ value, writing }) => urlDraft(value, [writing, ...outer], size) ?? [],
          );
        }),
      ),
    );
}

interface Picture {
  value: Mapped;
  writing: Writing;
}

function picturesIn(tokens: readonly CSSToken[], css: Mapped): Picture[] {
  const functions: string[] = [];
  const found: Picture[] = [];
  for (const token of tokens) {
    const [type, raw, start, end] = token;
    if (type === TokenType.Function) functions.push(token[4].value.toLowerCase());
    else if (type === TokenType.OpenParen) functions.push('');
    else if (type === TokenType.CloseParen) functions.pop();
    else if (type === TokenType.URL) {
      const inside = css.slice(start + raw.indexOf('(') + 1, raw.endsWith(')') ? end : end + 1);
      found.push({ value: cssUnescaped(inside.trim()), writing: 'css-bare' });
    } else if (type === TokenType.String && PICTURES.has(functions.at(-1) ?? '')) {
      const closed = raw.length > 1 && raw.endsWith(raw[0]);
      found.push({
        value: cssUnescaped(css.slice(start + 1, closed ? end : end + 1)),
        writing: raw[0] === '"' ? 'css-double' : 'css-single',
      });
    }
  }
  return found;
}

/** Of one layer: its own after the slash, else that of `background-size`, against the box where the block says it. */
function backgroundSize(block: Block, layer: readonly CSSToken[], at: number): LayoutSize | null {
  const slash = layer.findIndex(token => token[0] === TokenType.Delim && token[4].value === '/');
  const sizes = block.said('background-size')?.layers;
  const said = slash !== -1 ? layer.slice(slash + 1, slash + 3) : (sizes?.[at % sizes.length] ?? []);
  const box = { width: lengthIn(block, 'width'), height: lengthIn(block, 'height') };
  const word = said[0]?.[1].toLowerCase();
  if (word === 'cover' || word === 'contain') {
    if (!box.width || !box.height) return null;
    return { width: box.width, height: box.height, ...(word === 'contain' && { fits: true }) };
  }
  const width = said[0] && lengthOf(said[0][1], units.web, { whole: box.width });
  const height = said[1] && lengthOf(said[1][1], units.web, { whole: box.height });
  return width || height ? { ...(width && { width }), ...(height && { height }) } : null;
}

const lengthIn = (block: Block, name: string): number | undefined => {
  const first = block.said(name)?.layers[0][0];
  return first && lengthOf(first[1], units.web);
};
