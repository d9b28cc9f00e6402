import type { TraceView } from '../../core/capture/traceView.ts';
import type { Stretch } from '../../core/windows/window.ts';
import { questionUnderWay } from './settled.ts';
import type { TraceSource } from './traceStackProps.ts';

/** Where the views of one or more channels come from. */
export interface Feed {
  readonly source: TraceSource;
  readonly channelIds: readonly string[];
  /** The first and last second of the capture, so that nothing is asked for outside it. */
  readonly whole: Stretch;
  /** Longest usual interval between two samples, s: so much is asked for beyond both edges, that lines run in. */
  readonly intervalS: number;
}

interface Wish {
  readonly stretch: Stretch;
  readonly width: number;
}

interface Loaded {
  readonly stretch: Stretch;
  readonly secondsPerBucket: number;
  readonly views: readonly TraceView[];
  readonly everySample: boolean;
}

/** Share of the visible stretch that is asked for on either side, so that a pan finds something to draw. */
const SPARE = 0.35;
/** Buckets may be this much wider or finer than a pixel before new ones are asked for. */
const COARSEST = 1.02;
const FINEST = 0.55;

/**
 * Keeps the views of one feed up to date with the visible stretch. At most one question is under way; of the wishes
 * that come meanwhile only the last is asked. What was loaded before stays until the answer is there.
 */
export class ViewLoader {
  private readonly feed: Feed;
  private readonly onLoaded: () => void;
  private loaded: Loaded | null = null;
  private wanted: Wish | null = null;
  private flying = false;
  private closed = false;
  private over: () => void = () => undefined;
  /** Added to the times of the capture to get times of the axis, s; 0 outside comparisons. */
  shiftS = 0;
  /** True after a question that was not answered, until the next that is. */
  failed = false;

  constructor(feed: Feed, onLoaded: () => void) {
    this.feed = feed;
    this.onLoaded = onLoaded;
  }

  get views(): readonly TraceView[] {
    return this.loaded?.views ?? [];
  }

  /** True when what is loaded is as fine as the last wish asked for. */
  get upToDate(): boolean {
    return this.wanted === null && !this.flying;
  }

  /** `stretch` of the axis will be drawn over `width` device pixels. */
  want(stretch: Stretch, width: number): void {
    const { shiftS } = this;
    const wish = { stretch: { startS: stretch.startS - shiftS, endS: stretch.endS - shiftS }, width };
    const { whole } = this.feed;
    if (wish.stretch.endS < whole.startS || wish.stretch.startS > whole.endS) return;
    if (!this.flying && this.serves(wish)) return;
    this.wanted = wish;
    if (!this.flying) this.ask();
  }

  close(): void {
    this.closed = true;
    this.wanted = null;
    // Nobody waits for an answer that nobody will draw.
    this.over();
  }

  private serves({ stretch, width }: Wish): boolean {
    if (this.loaded === null) return false;
    const { startS, endS } = this.loaded.stretch;
    const { whole } = this.feed;
    const covered =
      startS <= Math.max(stretch.startS, whole.startS) + 1e-9 && endS >= Math.min(stretch.endS, whole.endS) - 1e-9;
    if (!covered) return false;
    const share = this.loaded.secondsPerBucket / ((stretch.endS - stretch.startS) / width);
    return this.loaded.everySample || (share <= COARSEST && share >= FINEST);
  }

  private ask(): void {
    const wish = this.wanted;
    if (wish === null || this.closed) return;
    this.wanted = null;
    const { stretch, buckets } = this.question(wish);
    this.flying = true;
    this.over = questionUnderWay();
    const { over } = this;
    void this.feed.source
      .views(this.feed.channelIds, stretch, buckets)
      .then(
        (views) => this.keep(stretch, buckets, views),
        () => {
          // The core's process may be gone; the workspace says so. What was drawn before stays.
          this.failed = true;
        },
      )
      .then(() => {
        this.flying = false;
        if (!this.closed) this.onLoaded();
        const next = this.wanted;
        if (next !== null && this.serves(next)) this.wanted = null;
        this.ask();
        over();
      });
  }

  private question({ stretch, width }: Wish): { stretch: Stretch; buckets: number } {
    const span = stretch.endS - stretch.startS;
    const spare = Math.max(SPARE * span, 2.5 * this.feed.intervalS);
    const { whole } = this.feed;
    const startS = Math.max(whole.startS, stretch.startS - spare);
    const endS = Math.min(whole.endS, stretch.endS + spare);
    const held = endS > startS ? { startS, endS } : { startS: whole.startS, endS: whole.endS };
    return { stretch: held, buckets: Math.max(1, Math.ceil(((held.endS - held.startS) / span) * width)) };
  }

  private keep(stretch: Stretch, buckets: number, views: readonly TraceView[]): void {
    this.failed = false;
    this.loaded = {
      stretch,
      secondsPerBucket: (stretch.endS - stretch.startS) / buckets,
      views,
      everySample: views.every((view) => view.kind === 'samples'),
    };
  }
}
