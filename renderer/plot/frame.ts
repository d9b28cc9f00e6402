// The one owner of animation frames. A stack says that it is stale; in the next frame every stale stack first moves its
// view on, then all of them draw. Nobody else asks for a frame.

export interface FrameClient {
  /** Moves the view on; true while it wants another frame, because a movement is under way. */
  changeView(nowMs: number): boolean;
  draw(): void;
}

export class FrameScheduler {
  private readonly stale = new Set<FrameClient>();
  private readonly request: (run: (nowMs: number) => void) => void;
  private requested = false;

  constructor(request: (run: (nowMs: number) => void) => void) {
    this.request = request;
  }

  /** `client` is moved on and drawn in the next frame, once, however often it says so before. */
  markStale(client: FrameClient): void {
    this.stale.add(client);
    if (this.requested) return;
    this.requested = true;
    this.request(this.run);
  }

  forget(client: FrameClient): void {
    this.stale.delete(client);
  }

  get idle(): boolean {
    return this.stale.size === 0;
  }

  private readonly run = (nowMs: number): void => {
    this.requested = false;
    const clients = [...this.stale];
    this.stale.clear();
    const moving = clients.filter((client) => client.changeView(nowMs));
    for (const client of clients) client.draw();
    for (const client of moving) this.markStale(client);
  };
}

/** The scheduler of the window. */
export const frame = new FrameScheduler((run) => requestAnimationFrame(run));
