import type { Conversion, ConvertReport, Fitting, UndoReport } from '../../shared/conversion';
import { missingIn } from '../missing';
import { otherThanAsked } from '../otherwise';
import { document, SCHEMA } from './document';
import { canonical } from './number';

/**
 * What `evengrey convert` prints, by `convert-report.schema.json`: no absolute paths but in reasons, no times, the same
 * to the byte for the same pictures.
 */
export function convertJson(
  { dryRun, conversions, folder, originals, untoned, below, notices, relinking, stopped }: ConvertReport,
  { fit, counterTint }: Fitting,
): string {
  return document({
    schema: SCHEMA,
    dryRun,
    fit,
    counterTint,
    conversions: conversions.map(conversionJson),
    folder,
    missing: missingIn({ conversions, folder }).map(({ path }) => path),
    originals,
    untoned,
    below,
    notices,
    relinking,
    stopped,
    summary: {
      ...counted(conversions, ['converted', 'copied', 'planned', 'skipped', 'failed']),
      otherThanAsked: otherThanAsked({ conversions, below }).length,
    },
  });
}

/** What `evengrey convert --undo` prints, by `undo-report.schema.json`. */
export function undoJson({ dryRun, undone, relinking, stopped }: UndoReport): string {
  return document({
    schema: SCHEMA,
    dryRun,
    undone: undone.map(({ path, outcome, sha256, reason }) => ({ path, outcome, sha256, reason })),
    relinking,
    stopped,
    summary: counted(undone, ['restored', 'planned', 'skipped', 'failed', 'lost']),
  });
}

const conversionJson = (conversion: Conversion) => ({
  path: conversion.path,
  outcome: conversion.outcome,
  output: conversion.output,
  sha256: conversion.sha256 || null,
  from: conversion.from,
  to: conversion.to,
  format: conversion.format,
  bits: conversion.bits,
  reason: conversion.reason,
  proof: conversion.proof && {
    encoding: conversion.proof.encoding,
    maxError: canonical(conversion.proof.maxError),
    meanError: canonical(conversion.proof.meanError),
    sha256: conversion.proof.sha256,
    bytes: conversion.proof.bytes,
  },
  moved: conversion.moved && {
    max: canonical(conversion.moved.maxMove),
    mean: canonical(conversion.moved.meanMove),
    method: conversion.moved.method,
    fit: conversion.moved.fit,
    blackPoint: conversion.moved.blackPoint,
  },
  told: conversion.told,
});

function counted(all: readonly { outcome: string }[], outcomes: readonly string[]): Record<string, number> {
  return Object.fromEntries(
    outcomes.map(outcome => [outcome, all.filter(each => each.outcome === outcome).length]),
  );
}
