import type { MonitorStatus, Reported, TestResult } from '../../capture/reported.ts';
import { diagnosticAddress } from '../../diagnostics/canAddress.ts';
import type { DataValue, SensorPlacement } from '../../diagnostics/dataItem.ts';
import { dataItems } from '../../diagnostics/dataItems.ts';
import { MessageAssembler } from '../../diagnostics/isoTp.ts';
import { monitorStatus } from '../../diagnostics/monitorStatus.ts';
import { readData, supportedPids } from '../../diagnostics/readData.ts';
import { testResultsIn } from '../../diagnostics/testResults.ts';
import { CODE_SERVICES, troubleCodesIn } from '../../diagnostics/troubleCode.ts';
import { vehicleNumberIn } from '../../diagnostics/vehicleNumber.ts';
import { GrowingColumn } from './growingColumn.ts';
import type { LoggedFrame } from './logLine.ts';

/** A column of decoded values of one control unit. Times are seconds since 1970. */
export interface AnswerColumn {
  readonly of: DataValue;
  readonly bus: string;
  /** Name of the control unit on the bus: "7E8". */
  readonly sender: string;
  readonly timesS: Float64Array;
  readonly values: Float64Array;
}

/** Frames that gave no value, by reason. */
export interface PassedOver {
  otherTraffic: number;
  requests: number;
  refusals: number;
  dropped: number;
  unknownItems: number;
}

/**
 * Sorts frames into columns: every answer of service 01 by control unit and data item, codes, tests and the vehicle
 * number beside them. Feed frames in the order of the log with `take`, then ask once for `finished`. Memory grows with
 * the values kept, not with the frames passed over.
 */
export class AnswerCollector {
  readonly passedOver: PassedOver = { otherTraffic: 0, requests: 0, refusals: 0, dropped: 0, unknownItems: 0 };
  private readonly assembler = new MessageAssembler();
  private readonly columns = new Map<
    string,
    { bus: string; sender: string; pid: number; index: number; column: GrowingColumn }
  >();
  private readonly codes = new Map<string, Reported['codes'][number]>();
  private readonly tests = new Map<string, TestResult>();
  private vehicleNumber: string | null = null;
  private monitors: MonitorStatus | null = null;
  // A vehicle declares by item 13 or 1D how its oxygen sensors are numbered; the numbers of bytes are the same.
  private placement: SensorPlacement = 'twoBanks';
  private readonly items = dataItems('twoBanks');

  /** Takes one frame of the bus. */
  take(frame: LoggedFrame): void {
    const address = diagnosticAddress(frame.identifier, frame.extended);
    if (address?.kind !== 'answer') {
      if (address) this.passedOver.requests++;
      else this.passedOver.otherTraffic++;
      return;
    }
    const sender = frame.identifier.toString(16).toUpperCase();
    const result = this.assembler.take(`${frame.bus} ${sender}`, frame.data);
    if (result.kind === 'dropped') this.passedOver.dropped++;
    if (result.kind === 'message') this.takeMessage(frame, sender, result.payload);
  }

  private takeMessage(frame: LoggedFrame, sender: string, message: Uint8Array): void {
    const service = message[0] ?? 0;
    if (service === 0x7f) this.passedOver.refusals++;
    else if (service === 0x41) this.takeData(frame, sender, message);
    else if (service in CODE_SERVICES) this.takeCodes(service, message);
    else if (service === 0x46)
      for (const test of testResultsIn(message)) this.tests.set(`${test.monitor} ${test.test}`, test);
    else if (service === 0x49) this.vehicleNumber = vehicleNumberIn(message) ?? this.vehicleNumber;
  }

  private takeData({ timeS, bus }: LoggedFrame, sender: string, message: Uint8Array): void {
    const found = readData(message, this.items);
    if (found.unknownPid !== null || found.cut) this.passedOver.unknownItems++;
    for (const { pid, data } of found.items) {
      if (pid === 0x01) this.monitors = monitorStatus(data) ?? this.monitors;
      if (pid === 0x1d || (pid === 0 && supportedPids(0, data).includes(0x1d))) this.placement = 'fourBanks';
    }
    for (const { pid, of, value } of found.values) {
      const index = this.items.get(pid)?.values.indexOf(of) ?? 0;
      const key = `${bus} ${sender} ${pid} ${index}`;
      const kept = this.columns.get(key) ?? { bus, sender, pid, index, column: new GrowingColumn() };
      this.columns.set(key, kept);
      kept.column.add(timeS, value);
    }
  }

  private takeCodes(service: number, message: Uint8Array): void {
    const status = CODE_SERVICES[service];
    if (!status) return;
    for (const code of troubleCodesIn(message)) this.codes.set(`${code} ${status}`, { code, status });
  }

  /** Columns in the order in which they first came, and what the vehicle reported. */
  finished(): { columns: AnswerColumn[]; reported: Reported } {
    this.passedOver.dropped += this.assembler.unfinished();
    const items = dataItems(this.placement);
    const columns: AnswerColumn[] = [];
    for (const { bus, sender, pid, index, column } of this.columns.values()) {
      const of = items.get(pid)?.values[index];
      if (of) columns.push({ of, bus, sender, ...column.finished() });
    }
    const { vehicleNumber, monitors } = this;
    return {
      columns,
      reported: { codes: [...this.codes.values()], vehicleNumber, monitors, tests: [...this.tests.values()] },
    };
  }
}
