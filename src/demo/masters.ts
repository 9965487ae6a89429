// no-unit-test: a list; test/cli/demo.test.ts checks the pictures made from it
import { develop, type Film } from './film';
import type { Plate } from './plate';
import * as cliff from './scenes/cliff';
import * as cloth from './scenes/cloth';
import * as fog from './scenes/fog';
import * as head from './scenes/head';
import * as sky from './scenes/sky';
import * as snow from './scenes/snow';
import * as window from './scenes/window';
import * as wood from './scenes/wood';

/** A developed picture: tones 0-1 in the numbers that a file keeps. */
export interface Master {
  width: number;
  height: number;
  tones: Float32Array;
}

export type SceneId = 'cliff' | 'cloth' | 'fog' | 'head' | 'sky' | 'snow' | 'window' | 'wood';

const SCENES: Record<SceneId, { draw(width: number, height: number): Plate; film: Film }> = {
  cliff: { draw: cliff.cliff, film: cliff.film },
  cloth: { draw: cloth.cloth, film: cloth.film },
  fog: { draw: fog.fog, film: fog.film },
  head: { draw: head.head, film: head.film },
  sky: { draw: sky.sky, film: sky.film },
  snow: { draw: snow.snow, film: snow.film },
  window: { draw: window.window, film: window.film },
  wood: { draw: wood.wood, film: wood.film },
};

export const scenes = Object.keys(SCENES) as SceneId[];

/** Draws and develops a scene at 3:2. */
export function master(scene: SceneId, width: number): Master {
  const height = Math.round((width * 2) / 3);
  const { draw, film } = SCENES[scene];
  return { width, height, tones: develop(draw(width, height), film) };
}
