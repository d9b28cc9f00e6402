/** What one frame brought about. */
export type FrameResult =
  | { readonly kind: 'message'; readonly payload: Uint8Array }
  | { readonly kind: 'part' }
  | { readonly kind: 'flowControl' }
  /** A frame that belongs to no message, or a message that lost a part: dropped and counted, never joined. */
  | { readonly kind: 'dropped'; readonly why: 'sequence' | 'noFirstFrame' | 'length' | 'unknownType' };

interface Pending {
  readonly payload: Uint8Array;
  filled: number;
  sequence: number;
}

/**
 * Puts messages together from frames of up to eight bytes, one sender at a time (ISO 15765-2). The top nibble of the
 * first byte says what the frame is: 0 a whole message, 1 the first part (12-bit length), 2 a following part with a
 * sequence number 1..15, 0, 1, ..., 3 flow control. Padding after the stated length is not data. The longest message
 * is 4095 bytes.
 */
export class MessageAssembler {
  private readonly pending = new Map<string, Pending>();

  /** Takes one frame of `sender`. `frame` is not kept: payloads are copies. */
  take(sender: string, frame: Uint8Array): FrameResult {
    const first = frame[0];
    if (first === undefined) return { kind: 'dropped', why: 'length' };
    switch (first >> 4) {
      case 0:
        return this.single(sender, first & 0x0f, frame);
      case 1:
        return this.firstPart(sender, ((first & 0x0f) << 8) | (frame[1] ?? 0), frame);
      case 2:
        return this.nextPart(sender, first & 0x0f, frame);
      case 3:
        return { kind: 'flowControl' };
      default:
        return { kind: 'dropped', why: 'unknownType' };
    }
  }

  /** Messages that were begun and never ended. */
  unfinished(): number {
    return this.pending.size;
  }

  private single(sender: string, length: number, frame: Uint8Array): FrameResult {
    this.pending.delete(sender);
    if (length < 1 || length > 7 || frame.length < 1 + length) return { kind: 'dropped', why: 'length' };
    return { kind: 'message', payload: frame.slice(1, 1 + length) };
  }

  private firstPart(sender: string, length: number, frame: Uint8Array): FrameResult {
    this.pending.delete(sender);
    if (length < 8 || frame.length < 8) return { kind: 'dropped', why: 'length' };
    const payload = new Uint8Array(length);
    payload.set(frame.subarray(2, 8));
    this.pending.set(sender, { payload, filled: 6, sequence: 1 });
    return { kind: 'part' };
  }

  private nextPart(sender: string, sequence: number, frame: Uint8Array): FrameResult {
    const message = this.pending.get(sender);
    if (!message) return { kind: 'dropped', why: 'noFirstFrame' };
    const wanted = Math.min(7, message.payload.length - message.filled);
    if (sequence !== message.sequence || frame.length < 1 + wanted) {
      this.pending.delete(sender);
      return { kind: 'dropped', why: sequence === message.sequence ? 'length' : 'sequence' };
    }
    message.payload.set(frame.subarray(1, 1 + wanted), message.filled);
    message.filled += wanted;
    message.sequence = (message.sequence + 1) & 0x0f;
    if (message.filled < message.payload.length) return { kind: 'part' };
    this.pending.delete(sender);
    return { kind: 'message', payload: message.payload };
  }
}
