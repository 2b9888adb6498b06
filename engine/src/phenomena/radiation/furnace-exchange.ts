/**
 * Exchange factor of steel in a furnace whose gas radiates and whose walls only reflect and re-radiate, after Timofeev
 * (from memory, unconfirmed): q = C σ (Tg⁴ − Ts⁴) with this C.
 *
 * steel, gas   emissivities, 0 to 1;  wallOverSteel   wall area over steel area, above 0.
 */
export function timofeevExchange(steel: number, gas: number, wallOverSteel: number): number {
  const reflected = ((steel + gas * (1 - steel)) * (1 - gas)) / gas;
  return (steel * (wallOverSteel + 1 - gas)) / (reflected + wallOverSteel);
}

/** Two grey surfaces with clear gas between: the factor on the smaller, As/Aw = `ratio` (classical). */
export const enclosureExchange = (steel: number, wall: number, ratio: number): number =>
  1 / (1 / steel + ratio * (1 / wall - 1));

/**
 * Share of an exchange factor that is left on a face which looks into the gap to an equal neighbour, equally hot:
 * the pair is a pocket of two grey walls with an open mouth, above and below (exact for an even temperature).
 *
 * gap over height of the face, m/m; 0 shuts the face off, a wide gap frees it.
 */
export function gapShare(gap: number, height: number, exchange: number): number {
  const open = 1 - crossed(gap, height);
  return open <= 0 ? 0 : 1 / (1 - exchange + exchange / open);
}

/** View factor between two long strips of equal height that face each other across a gap (crossed strings). */
export const crossed = (gap: number, height: number): number => Math.hypot(1, gap / height) - gap / height;
