// no-unit-test: its names and its order are what test/report/json/index.test.ts reads
import type { Finding, PictureReport } from '../../shared/finding';
import type { ChromaFacts, PictureFacts } from '../../shared/picture';
import { adviceOn } from '../sheet/advice';
import { findingJson } from './finding';
import { forecastJson } from './forecast';
import { round } from './number';

/**
 * A picture as reports give it: what was read, what the settings say, forecasts, findings and what to do. `shared`:
 * findings about the whole book.
 */
export function pictureJson(report: PictureReport, shared: readonly Finding[]) {
  const { path, facts, ...picture } = report;
  const { ppi, ink, tone, profile, chroma } = facts;
  return {
    path,
    page: facts.page,
    sha256: facts.sha256 || null,
    format: facts.format,
    width: facts.width,
    height: facts.height,
    channels: facts.channels,
    bits: facts.bits,
    alpha: facts.alpha,
    palette: facts.palette,
    space: facts.space,
    encoding: facts.encoding,
    intent: picture.intent,
    intentStated: picture.intentStated,
    part: picture.part,
    targets: picture.targets.map(target => target.name),
    replacedBy: picture.replacedBy ?? null,
    placedAt: (picture.placedAt ?? []).map(({ file, line, column }) => ({ file, line, column })),
    position: picture.position ?? null,
    placed: picture.placed && {
      width: picture.placed.width ?? null,
      height: picture.placed.height ?? null,
    },
    profile: profile && {
      description: profile.description,
      space: profile.space,
      class: profile.class,
      greyAxisChroma: profile.greyAxisChroma === null ? null : round(profile.greyAxisChroma),
    },
    assumed: facts.assumed,
    ppi: ppi && { x: round(ppi.x), y: round(ppi.y) },
    orientation: facts.orientation,
    remedied: facts.remedied && {
      from: facts.remedied.from,
      to: facts.remedied.to,
      toned: facts.remedied.toned,
    },
    levels: facts.levels.map(({ min, max, mean }) => ({
      min: round(min),
      max: round(max),
      mean: round(mean),
    })),
    chroma: chroma && chromaJson(chroma),
    ink: ink && { maxTotal: round(ink.maxTotal), meanTotal: round(ink.meanTotal) },
    tone: tone && {
      darkest: round(tone.darkest),
      lightest: round(tone.lightest),
      histogram: tone.histogram.map(round),
    },
    remarks: remarksJson(facts),
    unreadable: facts.unreadable && { reason: facts.unreadable.reason, text: facts.unreadable.text },
    forecast: picture.forecasts.map(forecastJson),
    findings: [...picture.findings, ...(picture.waived ?? [])].map(findingJson),
    verdict: adviceOn(report, shared).kind,
  };
}

const chromaJson = (chroma: ChromaFacts) => ({
  max: round(chroma.max),
  mean: round(chroma.mean),
  share: round(chroma.share),
  hue: chroma.hue === null ? null : round(chroma.hue),
  zones: chroma.zones.map(zone => ({
    L: round(zone.L),
    weight: round(zone.weight),
    a: round(zone.a),
    b: round(zone.b),
    residual: round(zone.residual),
  })),
  places: chroma.places.map(({ x, y, width, height, max }) => ({ x, y, width, height, max: round(max) })),
  maxBlock: round(chroma.maxBlock),
  maxPixel: round(chroma.maxPixel),
});

const remarksJson = ({ remarks }: PictureFacts) => remarks.map(({ code, text }) => ({ code, text }));
