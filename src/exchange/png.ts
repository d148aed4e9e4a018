/** Pictures as PNG files (ISO/IEC 15948): 8-bit RGB, or RGBA when any pixel is not opaque. */
import { zlibSync } from 'fflate';
import type { Picture } from '../view/model';
import { crc32 } from './crc32';

const SIGNATURE = [137, 80, 78, 71, 13, 10, 26, 10];
const COMPRESSION_LEVEL = 6;

/** The picture as the bytes of a PNG file. */
export function encodePng(picture: Picture): Uint8Array<ArrayBuffer> {
  const channels = isOpaque(picture) ? 3 : 4;
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, picture.width);
  view.setUint32(4, picture.height);
  header.set([8, channels === 3 ? 2 : 6, 0, 0, 0], 8);
  const data = zlibSync(filterRows(picture, channels), { level: COMPRESSION_LEVEL });
  return join([
    Uint8Array.from(SIGNATURE),
    chunk('IHDR', header),
    chunk('IDAT', data),
    chunk('IEND', new Uint8Array(0)),
  ]);
}

function isOpaque({ pixels }: Picture): boolean {
  for (let i = 3; i < pixels.length; i += 4) if (pixels[i] !== 255) return false;
  return true;
}

/** Each row behind its filter byte: the first row by `Sub`, the others by `Up`. */
function filterRows({ width, height, pixels }: Picture, channels: number): Uint8Array {
  const stride = 1 + width * channels;
  const out = new Uint8Array(stride * height);
  const at = (x: number, y: number, k: number): number => pixels[4 * (y * width + x) + k]!;
  for (let y = 0; y < height; y++) {
    out[y * stride] = y === 0 ? 1 : 2;
    for (let x = 0; x < width; x++) {
      for (let k = 0; k < channels; k++) {
        const before = y > 0 ? at(x, y - 1, k) : x > 0 ? at(x - 1, y, k) : 0;
        out[y * stride + 1 + x * channels + k] = at(x, y, k) - before;
      }
    }
  }
  return out;
}

function chunk(type: string, data: Uint8Array): Uint8Array {
  const out = new Uint8Array(12 + data.length);
  const view = new DataView(out.buffer);
  view.setUint32(0, data.length);
  for (let i = 0; i < 4; i++) out[4 + i] = type.charCodeAt(i);
  out.set(data, 8);
  view.setUint32(8 + data.length, crc32(out.subarray(4, 8 + data.length)));
  return out;
}

function join(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(parts.reduce((n, part) => n + part.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}
