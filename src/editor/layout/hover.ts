// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Glance, GlanceForecast, Place } from '../../shared/layout-places';
import type { CheckerClient } from '../checker-client';
import { OPEN_PICTURE, pictureId } from './commands';
import type { LayoutPlaces } from './places';
import { rangeOf } from './ranges';

/** A longer text would be cut by the editor, in the middle of a drawing. */
const LONGEST = 95_000;

/** The path of a picture, pointed at: the picture in brief. */
export function hoverProvider(places: LayoutPlaces, checker: CheckerClient): vscode.HoverProvider {
  return {
    async provideHover(document, position, token) {
      const layout = await places.of(document);
      const place = layout?.places.find(place => rangeOf(place).contains(position));
      if (!layout || !place?.picture || !place.isThere || token.isCancellationRequested) return;
      const { root } = layout.book;
      const cancel = new AbortController();
      const listening = token.onCancellationRequested(() => cancel.abort());
      try {
        const question = { root: root.fsPath, picture: place.picture };
        const glance = await checker.ask('glance', question, { signal: cancel.signal });
        const uri = vscode.Uri.joinPath(root, place.picture);
        return new vscode.Hover(textOf(place, uri, glance), rangeOf(place));
      } catch {
        // given up; or a picture that went meanwhile, which its line will tell
        return;
      } finally {
        listening.dispose();
      }
    },
  };
}

function textOf(place: Place, uri: vscode.Uri, glance: Glance): vscode.MarkdownString {
  const text = written(place, uri, glance);
  return text.value.length < LONGEST ? text : written(place, uri, { ...glance, thumbnail: null });
}

/** The picture stands first: a hover is low, and its text scrolls. */
function written(
  { picture, findings }: Place,
  uri: vscode.Uri,
  { encoding, thumbnail, verdict, resolution, forecasts: [first, ...others], more, inBook }: Glance,
): vscode.MarkdownString {
  const t = vscode.l10n.t;
  const small =
    thumbnail &&
    image(
      t('The picture, small'),
      `${dataUri('image/png', thumbnail.png)}|width=${thumbnail.width},height=${thumbnail.height}`,
    );
  const links = [
    link(t('Show how it prints'), OPEN_PICTURE, pictureId(uri), t('Open {0}', picture ?? '')),
    ...[...new Set(findings.map(({ rule }) => rule))].map(rule =>
      link(rule, 'evengrey.explainRule', rule, t('What this finding means')),
    ),
  ];
  const paragraphs = [
    [small, first && drawingOf(first)].filter(Boolean).join('&nbsp; '),
    [verdict && `**${plain(verdict)}**`, resolution && plain(resolution)].filter(Boolean).join(' · '),
    `**${plain(encoding.name)}** (\`${encoding.id}\`)${first ? `\\. **${plain(first.expect)}**` : ''}`,
    first ? caption() : '',
    ...(first ? [groundOf(first)] : []),
    ...others.flatMap(other => [`**${plain(other.expect)}**`, drawingOf(other), groundOf(other)]),
    more ? plain(t('Its other targets are in the preview: {0}.', more)) : '',
    plain(inBook ? encoding.meaning : t('It is no picture of the book, so that nothing is foretold.')),
    links.join(' · '),
  ];
  const text = new vscode.MarkdownString(paragraphs.filter(Boolean).join('\n\n'));
  text.isTrusted = { enabledCommands: [OPEN_PICTURE, 'evengrey.explainRule'] };
  return text;
}

const drawingOf = ({ drawing }: GlanceForecast) =>
  image(vscode.l10n.t('Ten possible orders'), dataUri('image/svg+xml', Buffer.from(drawing)));

/** Close to the first drawing: nobody is to take it for what will be printed. */
const caption = () =>
  `*${plain(
    vscode.l10n.t(
      "At the top the file's own greys, under them ten possible orders, a row each: not the colours that it will have.",
    ),
  )}*`;

const groundOf = ({ drawn, condition, basis }: GlanceForecast) => plain(`${drawn} ${condition}. ${basis}.`);

/** Words as Markdown; the editor's own `appendText` keeps them from being broken into lines. */
const plain = (words: string) => words.replace(/[\\`*_{}[\]()#+\-.!~<>&|$]/g, '\\$&');

const image = (words: string, address: string) => `![${words}](${address})`;

const dataUri = (type: string, bytes: Uint8Array) =>
  `data:${type};base64,${Buffer.from(bytes).toString('base64')}`;

const link = (words: string, command: string, argument: string, title: string) =>
  `[${words}](command:${command}?${encodeURIComponent(JSON.stringify([argument]))} "${title.replaceAll('"', '')}")`;
