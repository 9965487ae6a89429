import picocolors from 'picocolors';

/** How a text is set: how wide, and whether colour is allowed. Colour only repeats what the words say. */
export interface Style {
  width: number;
  colour: boolean;
}

/** A terminal's own width up to a length that is good to read; 80 where there is none. */
export const styleFor = (stream: { isTTY?: boolean; columns?: number }, colour: boolean): Style => ({
  width: Math.max(40, Math.min(stream.columns || 80, 96)),
  colour,
});

export type Paint = Pick<
  ReturnType<typeof picocolors.createColors>,
  'bold' | 'dim' | 'red' | 'yellow' | 'cyan' | 'green'
>;

export const paintOf = ({ colour }: Style): Paint => picocolors.createColors(colour);

/** A file's name can hold anything, also what a terminal would obey: such characters are written out. */
export function safe(text: string): string {
  return text.replace(
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to be written out
    /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g,
    character => `\\u{${character.codePointAt(0)!.toString(16)}}`,
  );
}
