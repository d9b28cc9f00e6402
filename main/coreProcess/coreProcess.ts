import { MessageChannelMain, type MessagePortMain, type UtilityProcess } from 'electron';
import { type ToProcess, toShellSchema } from './processMessages.ts';

/** A window that talks to the core's process. */
export interface CoreClient {
  /** Takes a port to the process: now, and a new one each time the process had to be started again. */
  take(port: MessagePortMain): void;
  /** The process has ended, and every capture in it is gone. */
  lost(): void;
}

export interface CoreProcessParts {
  /** Starts the process; gives it back before it has come up. */
  fork(): UtilityProcess;
  /** The file that a token was given out for, or null. */
  whichFile(token: string): { readonly path: string; readonly name: string } | null;
  /** Told when the process ends without having been asked to. */
  tellFault(fault: unknown): void;
}

/** A process that ends this often before it has come up will not come up by itself. */
const MOST_FALSE_STARTS = 3;

/** Keeps one core process alive, and its windows connected to it. */
export class CoreProcess {
  readonly #parts: CoreProcessParts;
  readonly #clients = new Set<CoreClient>();
  #child: UtilityProcess | null = null;
  #ready = false;
  #falseStarts = 0;
  #ending = false;

  constructor(parts: CoreProcessParts) {
    this.#parts = parts;
  }

  start(): void {
    const child = this.#parts.fork();
    this.#child = child;
    this.#ready = false;
    child.on('message', (message: unknown) => this.#hear(child, message));
    child.on('exit', (status) => this.#ended(child, status));
  }

  connect(client: CoreClient): void {
    this.#clients.add(client);
    if (this.#ready) this.#handOver(client);
  }

  disconnect(client: CoreClient): void {
    this.#clients.delete(client);
  }

  end(): void {
    this.#ending = true;
    this.#child?.kill();
  }

  #hear(child: UtilityProcess, message: unknown): void {
    if (child !== this.#child) return;
    const heard = toShellSchema.parse(message);
    if (heard.type === 'ready') {
      this.#ready = true;
      this.#falseStarts = 0;
      for (const client of this.#clients) this.#handOver(client);
      return;
    }
    const file = this.#parts.whichFile(heard.token);
    const answer: ToProcess = {
      type: 'file',
      id: heard.id,
      file: file === null ? null : { path: file.path, name: file.name },
    };
    child.postMessage(answer);
  }

  #handOver(client: CoreClient): void {
    const { port1, port2 } = new MessageChannelMain();
    const message: ToProcess = { type: 'window' };
    this.#child?.postMessage(message, [port1]);
    client.take(port2);
  }

  #ended(child: UtilityProcess, status: number): void {
    if (child !== this.#child || this.#ending) return;
    this.#parts.tellFault(new Error(`The process that holds the captures ended with status ${status}.`));
    if (!this.#ready) this.#falseStarts++;
    this.#ready = false;
    for (const client of this.#clients) client.lost();
    if (this.#falseStarts < MOST_FALSE_STARTS) this.start();
  }
}
