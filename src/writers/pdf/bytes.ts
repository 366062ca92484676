/** Whole hundredths of a point: short to write, and the same on every machine. */
export function hundredths(value: number): number {
  const whole = Math.round(value * 100);
  if (!Number.isFinite(whole)) throw new RangeError('not a number');
  return whole;
}

/** Text of single bytes that grows as it is written. Strings of this size would keep the collector busy. */
export class Bytes {
  private buffer: Uint8Array;
  length = 0;

  constructor(size = 1 << 14) {
    this.buffer = new Uint8Array(size);
  }

  private room(more: number): void {
    if (this.length + more <= this.buffer.length) return;
    const larger = new Uint8Array(Math.max(this.buffer.length * 2, this.length + more));
    larger.set(this.buffer.subarray(0, this.length));
    this.buffer = larger;
  }

  text(text: string): this {
    const { length } = text;
    this.room(length);
    const { buffer } = this;
    const at = this.length;
    for (let i = 0; i < length; i++) buffer[at + i] = text.charCodeAt(i);
    this.length = at + length;
    return this;
  }

  bytes(bytes: Uint8Array): this {
    this.room(bytes.length);
    this.buffer.set(bytes, this.length);
    this.length += bytes.length;
    return this;
  }

  /** A whole number, and a space after it. */
  whole(value: number): this {
    if (value <= -1e9 || value >= 1e9) return this.text(`${value} `);
    this.room(12);
    const { buffer } = this;
    let at = this.length;
    // Whole numbers of the processor from here on: a page holds ten thousand of these.
    let rest = value | 0;
    if (rest < 0) {
      buffer[at++] = 0x2d;
      rest = -rest;
    }
    let size = 1;
    for (let power = 10; rest >= power && size < 10; power *= 10) size++;
    for (let digit = at + size - 1; digit >= at; digit--) {
      const tenth = (rest / 10) | 0;
      buffer[digit] = 0x30 + rest - tenth * 10;
      rest = tenth;
    }
    at += size;
    buffer[at++] = 0x20;
    this.length = at;
    return this;
  }

  done(): Uint8Array {
    return this.buffer.subarray(0, this.length);
  }
}
