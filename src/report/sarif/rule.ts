import { rules } from '../../rules';
import { markdownText } from '../text/markdown';

/** No lines are broken: whoever shows a help text wraps it. */
const PLAIN = { width: Number.POSITIVE_INFINITY, colour: false };

/** A rule as SARIF describes it (`reportingDescriptor`), with its page as help. */
export function descriptorOf(id: string) {
  const { description, severity, page } = rules.find(rule => rule.id === id)!;
  return {
    id,
    shortDescription: { text: description },
    fullDescription: { text: inPrint(page) },
    defaultConfiguration: { level: severity },
    help: { text: markdownText(page, PLAIN), markdown: page },
  };
}

/** What the rule's findings mean in print: the first paragraph under that heading, with the list that it announces. */
function inPrint(page: string): string {
  const [, paragraph] = /^## In print\n+([\s\S]*?[^:])\n(?:\n|$)/m.exec(page)!;
  return markdownText(paragraph, PLAIN).trim();
}
