// no-unit-test: part of pages that test/report/page/contacts.test.ts and test/e2e/suites/overview read
import type { Encoding } from '../../shared/picture';
import { type Html, html } from './html';

/** A filter that shows a picture as one possible order of it. `channels`: what becomes of red, green, blue; 0-1. */
export function drawingFilter(
  channels: readonly (readonly number[])[],
  id: string,
  encoding: Encoding,
): Html {
  const [red, green, blue] = channels.map(values => values.map(value => Number(value.toFixed(3))).join(' '));
  // a forecast has the tone of the file's greys, or of its inks, in it already; left-over colour comes on top of it
  const grey =
    encoding !== 'rgb-residual' && html`<feColorMatrix values="${`${LUMA} ${LUMA} ${LUMA} 0 0 0 1 0`}"/>`;
  return html`<filter id="${id}" color-interpolation-filters="sRGB" x="0" y="0" width="100%" height="100%">${grey}<feComponentTransfer><feFuncR type="table" tableValues="${red}"/><feFuncG type="table" tableValues="${green}"/><feFuncB type="table" tableValues="${blue}"/></feComponentTransfer></filter>`;
}

/** A grey of R, G, B by the luma weights of Rec. ITU-R BT.709. */
const LUMA = '0.2126 0.7152 0.0722 0 0';
