import type { Sheet, ShownFinding } from '../../shared/sheet';
import { condition, figures, ways } from './condition';
import { type Html, html } from './html';
import { mark } from './marks';
import { printed } from './typography';

/** What is said before any forecast: it goes with every drawing of one. */
export const CAUTION =
  "What is drawn below is one possible order, not the colour that it will have. Only that is a forecast; the picture itself is shown as the file is, and does not change. A screen is no proof: have a test print made before the run, and let the print house's own advice go first.";

/** What differs between a page in the editor and one in a browser. */
export interface Frame {
  /** The place where the picture is seen. */
  picture: Html;
  /** Leads to the other pages of the file where it has several. */
  pager?: Html;
  /** What is chosen of the forecasts, above them. */
  controls: Html;
  /** A rule's name, leading to its page. */
  rule(id: string): Html;
  /** Tables are folded away until they are asked for. */
  folded?: boolean;
  /** Begins every id inside. */
  id: string;
}

/** A picture's page: what to do, how it is stored, what was found, how it may print. */
export function sheet(of: Sheet, frame: Frame): Html {
  const { name, folder } = nameOf(of.path);
  // beside many findings there is room under the picture
  const crowded = of.findings.length > 1;
  return html`
<header class="head">
  <p class="folder">${folder}</p>
  <h1>${name}${of.page > 1 && html` <small>page ${of.page}</small>`}</h1>
  ${frame.pager}
</header>
<div class="spread">
  <section class="advice" data-kind="${of.advice.kind}" aria-label="What to do">
    ${mark(of.advice.kind)}
    <h2>${of.advice.title}</h2>
    <p>${of.advice.reason}</p>
  </section>
  <div class="plate">
    ${frame.picture}
    ${of.encoding.id !== 'unreadable' && html`<p class="caption">The file, as a screen shows it. It is no forecast${of.conditions.length > 0 && ': how it may print is drawn below'}.</p>`}
    ${crowded && stored(of)}
    ${findings('About this book', of.shared, frame)}
  </div>
  <div class="words">
    ${findings('Findings', of.findings, frame)}
    ${!crowded && stored(of)}
  </div>
</div>
${of.conditions.length > 0 && forecasts(of, frame)}`;
}

/** Nothing where there is no file. */
const stored = ({ encoding, facts }: Sheet): Html | false =>
  facts.length > 0 &&
  html`
<section class="encoding" aria-label="Encoding">
  <h2>${encoding.name} <code>${encoding.id}</code></h2>
  <p>${encoding.meaning}</p>
  <dl>${facts.map(([label, value]) => html`<div><dt>${label}</dt><dd>${value}</dd></div>`)}</dl>
</section>`;

function forecasts(of: Sheet, { controls, folded, id }: Frame): Html {
  return html`
<section class="forecasts" aria-labelledby="${id}-forecasts">
  <h2 id="${id}-forecasts" class="large">How it may print</h2>
  <p class="caution">${CAUTION}</p>
  ${controls}
  ${of.conditions.map((_, i) => condition(of, i, `${id}-condition-${i}`))}
  <details class="tables"${!folded && html` open`}>
    <summary>In numbers, and in the other encodings</summary>
    <div class="columns">
      <div>
        <h2>In numbers</h2>
        ${figures(of.conditions)}
      </div>
      <div>
        <h2>The other encodings</h2>
        <p class="caution">What this picture does, and what a sound grey picture of even tones does in each encoding. Each further row is for a book all of whose pictures are stored so: a picture that is stored unlike its neighbours is likely to print unlike them. "Even" counts the orders of 10 that are expected without a tint seen by itself, in brackets from the worst to the best that a print house may do with such a file.</p>
        ${of.conditions.map(c => ways(c, of))}
      </div>
    </div>
  </details>
  <details class="ground">
    <summary>Where these figures come from</summary>
    ${of.conditions.map(c => html`<h3>${c.process}, ${c.paper}</h3>${c.ground.map(line => html`<p>${line}</p>`)}`)}
  </details>
</section>`;
}

export function findings(title: string, list: readonly ShownFinding[], { rule }: Pick<Frame, 'rule'>): Html {
  if (list.length === 0) return html``;
  return html`
<section class="findings" aria-label="${title}">
  <h2>${title}</h2>
  <ul lang="en">${list.map(
    f => html`
    <li data-severity="${f.severity}">${mark(f.severity)}<div><p><span class="severity">${f.severity}: </span>${printed(f.message)}</p>
      ${rule(f.rule)}</div></li>`,
  )}</ul>
</section>`;
}

function nameOf(path: string) {
  const cut = path.lastIndexOf('/') + 1;
  return { folder: path.slice(0, cut), name: path.slice(cut) };
}
