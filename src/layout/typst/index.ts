import { Mapped } from '../mapped';
import { type Draft, looksLikePicture, plainDraft } from '../reference';
import type { LayoutSize } from '../types';
import { type StringLiteral, walk } from './code';
import { imageSize, pageTextWidth, widthIn } from './measures';
import { typstUnescaped } from './strings';

/** The pictures of a Typst text: calls of `image`, and strings that name a picture for a function to place. */
export function typstDrafts(source: string, textWidth?: number): Draft[] {
  const drafts: Draft[] = [];
  let pageWidth: number | undefined;
  const placed = new Set<StringLiteral>();
  const strings: StringLiteral[] = [];
  const draft = ({ from, to }: StringLiteral, size: LayoutSize | null, certain: boolean) => {
    const written = typstUnescaped(Mapped.of(source, from, to));
    if (written.text) drafts.push(plainDraft(written, ['typst'], size, { certain }));
  };
  walk(source, {
    string: literal => strings.push(literal),
    call: call => {
      if (call.name === 'page' && call.setting) pageWidth = pageTextWidth(call.named) ?? pageWidth;
      if (call.name !== 'image' || call.setting || !call.first) return;
      placed.add(call.first);
      draft(call.first, imageSize(call, widthIn(call, textWidth ?? pageWidth)), true);
    },
  });
  for (const literal of strings)
    if (!placed.has(literal) && looksLikePicture(source.slice(literal.from, literal.to)))
      draft(literal, null, false);
  return drafts;
}
