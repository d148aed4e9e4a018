/** FNV-1a, 64 bit, over UTF-16 code units: a fingerprint of an input, not a security measure. */
export function fingerprint(text: string): string {
  const prime = 0x100000001b3n;
  const mask = 0xffffffffffffffffn;
  let hash = 0xcbf29ce484222325n;
  for (let i = 0; i < text.length; i++) hash = ((hash ^ BigInt(text.charCodeAt(i))) * prime) & mask;
  return hash.toString(16).padStart(16, '0');
}
