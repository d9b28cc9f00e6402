// Writes measurement files block by block, by the published layout of ASAM MDF 4, for tests only. It shares no code
// with the reader in core/reading/mdf4.

import { zlibSync } from 'fflate';

export interface MdfField {
  name: string;
  unit?: string;
  /** 0, 1 unsigned, 2, 3 signed, 4, 5 real; even is low byte first. */
  dataType: number;
  bitCount: number;
  bitOffset?: number;
  byteOffset: number;
  /** Conversion: type and values. */
  conversion?: { type: number; values: number[] };
  /** 2 makes it a master of time. */
  type?: number;
  /** Position of its invalidation bit. */
  wrongBit?: number;
}

export interface MdfGroup {
  recordId?: number;
  dataBytes: number;
  invalidationBytes?: number;
  cycles: number;
  fields: MdfField[];
}

export type DataForm = 'DT' | 'DL' | 'DZ' | 'DZT' | 'HL';

/** Grows a file; blocks start at addresses that are multiples of 8. */
class Blocks {
  private readonly parts: Uint8Array[] = [];
  private length = 0;

  add(bytes: Uint8Array): number {
    const at = this.length;
    this.parts.push(bytes);
    this.length += bytes.length;
    const padding = (8 - (this.length % 8)) % 8;
    if (padding) this.parts.push(new Uint8Array(padding));
    this.length += padding;
    return at;
  }

  block(id: string, links: number[], data: Uint8Array = new Uint8Array()): number {
    const length = 24 + links.length * 8 + data.length;
    const bytes = new Uint8Array(length);
    const view = new DataView(bytes.buffer);
    bytes.set(new TextEncoder().encode(`##${id}`));
    view.setBigUint64(8, BigInt(length), true);
    view.setBigUint64(16, BigInt(links.length), true);
    links.forEach((link, index) => {
      view.setBigUint64(24 + index * 8, BigInt(link), true);
    });
    bytes.set(data, 24 + links.length * 8);
    return this.add(bytes);
  }

  text(words: string | undefined): number {
    return words === undefined ? 0 : this.block('TX', [], new TextEncoder().encode(`${words}\0`));
  }

  get end(): number {
    return this.length;
  }

  bytes(): Uint8Array {
    const whole = new Uint8Array(this.length);
    let at = 0;
    for (const part of this.parts) {
      whole.set(part, at);
      at += part.length;
    }
    return whole;
  }
}

function data(size: number, write: (view: DataView) => void): Uint8Array {
  const bytes = new Uint8Array(size);
  write(new DataView(bytes.buffer));
  return bytes;
}

function addConversion(file: Blocks, given: MdfField['conversion']): number {
  if (!given) return 0;
  const body = data(24 + given.values.length * 8, (view) => {
    view.setUint8(0, given.type);
    view.setUint16(6, given.values.length, true);
    given.values.forEach((value, index) => {
      view.setFloat64(24 + index * 8, value, true);
    });
  });
  return file.block('CC', [0, 0, 0, 0], body);
}

function addFields(file: Blocks, fields: MdfField[]): number {
  let next = 0;
  for (const field of [...fields].reverse()) {
    const links = [
      next,
      0,
      file.text(field.name),
      0,
      addConversion(file, field.conversion),
      0,
      file.text(field.unit),
      0,
    ];
    const body = data(72, (view) => {
      view.setUint8(0, field.type ?? 0);
      view.setUint8(1, field.type === 2 || field.type === 3 ? 1 : 0);
      view.setUint8(2, field.dataType);
      view.setUint8(3, field.bitOffset ?? 0);
      view.setUint32(4, field.byteOffset, true);
      view.setUint32(8, field.bitCount, true);
      view.setUint32(12, field.wrongBit === undefined ? 0 : 2, true);
      view.setUint32(16, field.wrongBit ?? 0, true);
    });
    next = file.block('CN', links, body);
  }
  return next;
}

function addData(file: Blocks, records: Uint8Array, form: DataForm, stride: number): number {
  const dz = (piece: Uint8Array, transposed: boolean) => {
    const rows = Math.floor(piece.length / stride);
    const stored = new Uint8Array(piece);
    if (transposed) {
      let to = 0;
      for (let column = 0; column < stride; column++) {
        for (let row = 0; row < rows; row++) stored[to++] = piece[row * stride + column] ?? 0;
      }
    }
    const packed = zlibSync(stored);
    const head = data(24, (view) => {
      view.setUint8(0, 'D'.charCodeAt(0));
      view.setUint8(1, 'T'.charCodeAt(0));
      view.setUint8(2, transposed ? 1 : 0);
      view.setUint32(4, stride, true);
      view.setBigUint64(8, BigInt(piece.length), true);
      view.setBigUint64(16, BigInt(packed.length), true);
    });
    const body = new Uint8Array(24 + packed.length);
    body.set(head);
    body.set(packed, 24);
    return file.block('DZ', [], body);
  };
  if (form === 'DT') return file.block('DT', [], records);
  if (form === 'DZ' || form === 'DZT') return dz(records, form === 'DZT');
  // A list of three pieces cut in the middle of records, the second list block linked from the first.
  const cuts = [0, Math.floor(records.length / 3) + 1, Math.floor((2 * records.length) / 3) + 1, records.length];
  const pieces = [0, 1, 2].map((i) => file.block('DT', [], records.slice(cuts[i], cuts[i + 1])));
  const count = (n: number) => data(8 + n * 8, (view) => view.setUint32(4, n, true));
  const second = file.block('DL', [0, pieces[2] ?? 0], count(1));
  const first = file.block('DL', [second, pieces[0] ?? 0, pieces[1] ?? 0], count(2));
  return form === 'HL' ? file.block('HL', [first], new Uint8Array(8)) : first;
}

/** Header, four links and the size of the record id. */
const DG_BYTES = 64;

/** A whole file with one data group. `records` are the bytes as they stand in the data block, ids included. */
export function writeMdf4(options: {
  groups: MdfGroup[];
  records: Uint8Array;
  idBytes?: number;
  form?: DataForm;
  startNanoseconds?: bigint;
  version?: number;
  /** The data block comes last, as instruments write it while they record; with form DT only. */
  dataLast?: boolean;
}): Uint8Array {
  const file = new Blocks();
  const identification = data(64, (view) => {
    new Uint8Array(view.buffer).set(new TextEncoder().encode('MDF     4.10    '));
    view.setUint16(28, options.version ?? 410, true);
  });
  file.add(identification);
  const headerData = data(32, (view) => view.setBigUint64(0, options.startNanoseconds ?? 0n, true));
  const headerAt = file.block('HD', [0, 0, 0, 0, 0, 0], headerData);
  let nextGroup = 0;
  for (const group of [...options.groups].reverse()) {
    const body = data(32, (view) => {
      view.setBigUint64(0, BigInt(group.recordId ?? 0), true);
      view.setBigUint64(8, BigInt(group.cycles), true);
      view.setUint32(24, group.dataBytes, true);
      view.setUint32(28, group.invalidationBytes ?? 0, true);
    });
    nextGroup = file.block('CG', [nextGroup, addFields(file, group.fields), 0, 0, 0, 0], body);
  }
  const [first] = options.groups;
  const stride = (options.idBytes ?? 0) + (first?.dataBytes ?? 1) + (first?.invalidationBytes ?? 0);
  const add = () => addData(file, options.records, options.form ?? 'DT', stride);
  const dg = file.block(
    'DG',
    [0, nextGroup, options.dataLast ? file.end + DG_BYTES : add(), 0],
    data(8, (view) => view.setUint8(0, options.idBytes ?? 0)),
  );
  if (options.dataLast) add();
  const whole = file.bytes();
  new DataView(whole.buffer).setBigUint64(headerAt + 24, BigInt(dg), true);
  return whole;
}
