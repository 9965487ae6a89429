/** The names between braces in a template, as a type: a message with an argument forgotten does not compile. */
type Names<T extends string> = T extends `${string}{${infer Name}}${infer Rest}` ? Name | Names<Rest> : never;

/**
 * A rule's message with its named arguments put in: `say('{n} pictures', { n: 3 })` is `3 pictures`.
 * Arguments are words already: probabilities, counts and lists come through `words.ts`.
 */
export function say<T extends string>(template: T, args: Record<Names<T>, string | number>): string {
  return template.replace(/\{(\w+)\}/g, (_, name: Names<T>) => String(args[name])).trim();
}
