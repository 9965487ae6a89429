/**
 * A message as a page prints it: a sign for "by" between numbers. Rules write plain characters, since terminals and logs read
 * them too; quotes stay what they are there, so that the tool has one kind of them.
 */
export const printed = (message: string): string => message.replace(/(\d) x (\d)/g, '$1 × $2');
