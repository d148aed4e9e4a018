/** Bytes as text that may stand in an address: base64url without filling, RFC 4648 section 5. */

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const VALUES = new Map([...LETTERS].map((letter, i) => [letter, i]));

export function writeBase64Url(bytes: readonly number[]): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const some = bytes.slice(i, i + 3);
    const sum = ((some[0] ?? 0) << 16) | ((some[1] ?? 0) << 8) | (some[2] ?? 0);
    for (let k = 0; k <= some.length; k++) text += LETTERS[(sum >> (18 - 6 * k)) & 63];
  }
  return text;
}

/** The bytes, or null when a character is none of the 64, or the end is not as it is written. */
export function readBase64Url(text: string): number[] | null {
  if (text.length % 4 === 1) return null;
  const bytes: number[] = [];
  let sum = 0;
  for (let i = 0; i < text.length; i++) {
    const value = VALUES.get(text[i]!);
    if (value === undefined) return null;
    sum = ((sum << 6) | value) & 0xffffff;
    if (i % 4 > 0) bytes.push((sum >> (6 - 2 * (i % 4))) & 255);
  }
  const unused = [0, 0, 15, 3][text.length % 4]!;
  return (sum & unused) === 0 ? bytes : null;
}
