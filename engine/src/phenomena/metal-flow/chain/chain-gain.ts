/** How much of the chain's step is taken: more while steps point the same way, less when one turns back. */
export interface ChainGain {
  share: number;
  last: Float64Array | undefined;
}

export const chainGain = (): ChainGain => ({ share: 0.7, last: undefined });

export function renewChainGain(gain: ChainGain, step: Float64Array): void {
  if (gain.last) {
    const alike = cosine(step, gain.last);
    gain.share = alike < 0 ? Math.max(0.05, 0.6 * gain.share) : Math.min(1, (1 + 0.4 * alike) * gain.share);
  }
  gain.last = step;
}

function cosine(a: Float64Array, b: Float64Array): number {
  let [both, own, other] = [0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    both += a[i] * b[i];
    own += a[i] * a[i];
    other += b[i] * b[i];
  }
  return both === 0 ? 0 : both / Math.sqrt(own * other);
}
