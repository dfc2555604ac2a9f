import { type Socket, connect } from 'node:net';

/** An error the browser sent back: `name` is the WebDriver error code, such as `no such element`. */
export class MarionetteError extends Error {
  constructor(command: string, code: string, message: string) {
    super(`${command}: ${code}: ${message}`);
    this.name = code;
  }
}

interface Waiting {
  command: string;
  resolve: (value: unknown) => void;
  reject: (error: Error) => void;
}

/** The wire half of Firefox's remote protocol: length-prefixed JSON over one TCP connection. */
export class Marionette {
  #socket: Socket;
  #received: Buffer = Buffer.alloc(0);
  #waiting = new Map<number, Waiting>();
  #lastId = 0;
  #greet: (() => void) | undefined;

  private constructor(socket: Socket) {
    this.#socket = socket;
    socket.on('data', (chunk: Buffer) => this.#read(chunk));
    socket.on('error', (error) => this.#fail(error));
    socket.on('close', () => this.#fail(new Error('The browser closed the connection')));
  }

  /** Connects to a listening browser, trying again until it listens or `timeout` milliseconds have passed. */
  static async connect(port: number, timeout = 30_000): Promise<Marionette> {
    const deadline = Date.now() + timeout;
    for (;;) {
      try {
        return await Marionette.#connectOnce(port);
      } catch (error) {
        if (Date.now() > deadline) throw error;
        await new Promise((resolve) => setTimeout(resolve, 50));
      }
    }
  }

  static #connectOnce(port: number): Promise<Marionette> {
    return new Promise((resolve, reject) => {
      const socket = connect(port, '127.0.0.1');
      socket.once('error', reject);
      socket.once('connect', () => {
        const client = new Marionette(socket);
        client.#greet = () => resolve(client);
      });
      socket.once('close', () => reject(new Error('The browser closed the connection')));
    });
  }

  /** Sends one command and waits for its result. */
  send<T = unknown>(command: string, params: Record<string, unknown> = {}): Promise<T> {
    const id = ++this.#lastId;
    const body = JSON.stringify([0, id, command, params]);
    return new Promise<T>((resolve, reject) => {
      if (this.#socket.destroyed) return reject(new Error(`${command}: the connection is closed`));
      this.#waiting.set(id, { command, resolve: resolve as (value: unknown) => void, reject });
      this.#socket.write(`${Buffer.byteLength(body)}:${body}`);
    });
  }

  /** Drops the connection; commands still waiting are rejected. */
  close(): void {
    this.#socket.destroy();
  }

  #fail(error: Error): void {
    for (const { command, reject } of this.#waiting.values()) {
      reject(new Error(`${command}: ${error.message}`));
    }
    this.#waiting.clear();
  }

  #read(chunk: Buffer): void {
    this.#received = Buffer.concat([this.#received, chunk]);
    for (;;) {
      const colon = this.#received.indexOf(':');
      if (colon < 0) return;
      const end = colon + 1 + Number(this.#received.subarray(0, colon).toString());
      if (this.#received.length < end) return;
      const message: unknown = JSON.parse(this.#received.subarray(colon + 1, end).toString());
      this.#received = this.#received.subarray(end);
      this.#take(message);
    }
  }

  #take(message: unknown): void {
    if (!Array.isArray(message)) return this.#greet?.();
    const [, id, error, result] = message as [
      number,
      number,
      { error: string; message: string } | null,
      unknown,
    ];
    const waiting = this.#waiting.get(id);
    this.#waiting.delete(id);
    if (error) waiting?.reject(new MarionetteError(waiting.command, error.error, error.message));
    else waiting?.resolve(result);
  }
}
