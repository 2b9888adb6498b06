/** Addresses name the station, so that any state can be sent as a link. */
export const lineAddress = '/';

export const stationAddress = (code: string): string => `/${encodeURIComponent(code)}`;

/** Code of the station that an address opens; undefined on the line. */
export function stationIn(address: string): string | undefined {
  const [, code] = address.split('/');
  return code ? decodeURIComponent(code) : undefined;
}
