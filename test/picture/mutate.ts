/** Numbers in 0-1 that are the same in every run (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t ^= t + Math.imul(t ^ (t >>> 7), 61 | t);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A damaged copy: cut short, or up to eight times a byte, a bit, a length or a stretch wrong, mostly in the header. */
export function mutated(bytes: Buffer, random: () => number): Buffer {
  const whole = (below: number) => Math.floor(random() * below);
  const out = Buffer.from(bytes);
  const kind = random();
  if (kind < 0.1) return out.subarray(0, whole(out.length));
  const towardsStart = kind < 0.6 ? 3 : 1;
  for (let n = 1 + whole(8); n > 0; n--) {
    const at = Math.floor(random() ** towardsStart * out.length);
    const how = random();
    if (how < 0.4) out[at] = whole(256);
    else if (how < 0.6) out[at] ^= 1 << whole(8);
    else if (how < 0.8) out[at] = [0, 255, 127, 128][whole(4)];
    else if (how < 0.9 && at + 4 <= out.length)
      out.writeUInt32LE([0, 0xffffffff, 0x7fffffff, out.length][whole(4)], at);
    else out.copy(out, whole(out.length), at, at + whole(20));
  }
  return out;
}
