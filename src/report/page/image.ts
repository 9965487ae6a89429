// no-unit-test: test/report/page/book-page.test.ts reads what it writes
import type { Raster } from '../../shared/reader-protocol';
import { type Html, html } from './html';

/** A picture to look at, made small: sRGB in a file format that browsers know. */
export interface Image extends Pick<Raster, 'fullWidth' | 'fullHeight'> {
  type: 'image/jpeg' | 'image/png';
  bytes: Uint8Array;
}

/** The picture itself, carried by the page. */
export const image = ({ type, bytes }: Image, alt: string, style = ''): Html =>
  html`<img alt="${alt}"${style && html` style="${style}"`} src="data:${type};base64,${Buffer.from(bytes).toString('base64')}"/>`;
