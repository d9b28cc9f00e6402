import { EventEmitter } from 'node:events';
import { describe, expect, it, vi } from 'vitest';
import { CoreProcess } from '../../../../main/coreProcess/coreProcess.ts';

vi.mock('electron', () => ({
  MessageChannelMain: class {
    readonly port1 = { end: 'process' };
    readonly port2 = { end: 'window' };
  },
}));

/** A process that does nothing by itself. */
class StillProcess extends EventEmitter {
  readonly told: { message: unknown; ports: unknown }[] = [];
  killed = false;
  postMessage(message: unknown, ports?: unknown) {
    this.told.push({ message, ports });
  }
  kill() {
    this.killed = true;
    return true;
  }
}

function start() {
  const children: StillProcess[] = [];
  const faults: unknown[] = [];
  const core = new CoreProcess({
    fork: () => {
      const child = new StillProcess();
      children.push(child);
      return child as never;
    },
    whichFile: (token) => (token === 'given' ? { path: '/drives/van.csv', name: 'van.csv' } : null),
    tellFault: (fault) => faults.push(fault),
  });
  core.start();
  const heard: string[] = [];
  const client = { take: () => heard.push('port'), lost: () => heard.push('lost') };
  return { core, children, faults, heard, client, last: () => children.at(-1) };
}

const ready = { type: 'ready' };

describe('CoreProcess', () => {
  it('hands a window its port when the process has come up, and not before', () => {
    const { core, client, heard, last } = start();
    core.connect(client);
    expect(heard).toEqual([]);
    last()?.emit('message', ready);
    expect(heard).toEqual(['port']);
    expect(last()?.told).toEqual([{ message: { type: 'window' }, ports: [{ end: 'process' }] }]);
  });

  it('T-EL-21: tells the process a path for a token it gave out, and for no other string', () => {
    const { last } = start();
    last()?.emit('message', ready);
    for (const token of ['given', 'given ', '/etc/passwd', '']) {
      last()?.emit('message', { type: 'whichFile', id: 1, token });
    }
    expect(last()?.told.map(({ message }) => Object(message).file)).toEqual([
      { path: '/drives/van.csv', name: 'van.csv' },
      null,
      null,
      null,
    ]);
  });

  it('T-OPEN-10: says when it is lost, starts again, and hands over a new port', () => {
    const { core, client, heard, last, children, faults } = start();
    core.connect(client);
    last()?.emit('message', ready);
    last()?.emit('exit', 11);
    expect(heard).toEqual(['port', 'lost']);
    expect(children).toHaveLength(2);
    expect(faults).toHaveLength(1);
    last()?.emit('message', ready);
    expect(heard).toEqual(['port', 'lost', 'port']);
  });

  it('survives twenty losses, but does not start for ever what never comes up', () => {
    const { children, last } = start();
    for (let round = 0; round < 20; round++) {
      last()?.emit('message', ready);
      last()?.emit('exit', 1);
    }
    expect(children).toHaveLength(21);
    for (let round = 0; round < 20; round++) last()?.emit('exit', 1);
    expect(children.length).toBeLessThan(26);
  });

  it('a window that has gone hears nothing more, and what is heard of an old process counts for nothing', () => {
    const { core, client, heard, last, children } = start();
    core.connect(client);
    last()?.emit('message', ready);
    core.disconnect(client);
    last()?.emit('exit', 1);
    children[0]?.emit('message', ready);
    children[0]?.emit('exit', 1);
    expect(heard).toEqual(['port']);
    expect(children).toHaveLength(2);
  });

  it('ends its process with itself, and calls that no fault', () => {
    const { core, last, faults, children } = start();
    core.end();
    expect(last()?.killed).toBe(true);
    last()?.emit('exit', 0);
    expect([faults.length, children.length]).toEqual([0, 1]);
  });
});
