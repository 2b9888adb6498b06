const digits = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** The bytes of a base64 text, which the language itself cannot read. */
export function bytesOf(text: string): Uint8Array<ArrayBuffer> {
  const end = text.replace(/=+$/, '').length;
  const bytes = new Uint8Array(Math.floor((end * 6) / 8));
  let [bits, held] = [0, 0];
  for (let i = 0, to = 0; i < end; i++) {
    bits = ((bits << 6) | digits.indexOf(text[i])) & 0xffff;
    held += 6;
    if (held < 8) continue;
    held -= 8;
    bytes[to++] = (bits >> held) & 0xff;
  }
  return bytes;
}
