import { registry } from '../registry.ts';
import { amplitudeRatio } from './amplitudeRatio.ts';
import { downstreamMaxV } from './downstreamMaxV.ts';
import { downstreamMeanV } from './downstreamMeanV.ts';
import { downstreamMinV } from './downstreamMinV.ts';
import { downstreamSpreadV } from './downstreamSpreadV.ts';
import { downstreamSwitchHz } from './downstreamSwitchHz.ts';
import { fastSwingRatio } from './fastSwingRatio.ts';
import { lagS } from './lagS.ts';
import type { Measure } from './measure.ts';
import { pathRatio } from './pathRatio.ts';
import { switchRatio } from './switchRatio.ts';
import { upstreamFallS, upstreamRiseS } from './upstreamEdgeS.ts';
import { upstreamMaxV } from './upstreamMaxV.ts';
import { upstreamMinV } from './upstreamMinV.ts';
import { upstreamRichShare } from './upstreamRichShare.ts';
import { upstreamSwitchHz } from './upstreamSwitchHz.ts';

/** Every measure, in the order in which people see them. */
export const MEASURES: readonly Measure[] = registry('measure', (measure) => measure.id, [
  switchRatio,
  amplitudeRatio,
  fastSwingRatio,
  pathRatio,
  lagS,
  upstreamSwitchHz,
  downstreamSwitchHz,
  upstreamMinV,
  upstreamMaxV,
  upstreamRichShare,
  upstreamRiseS,
  upstreamFallS,
  downstreamMeanV,
  downstreamSpreadV,
  downstreamMinV,
  downstreamMaxV,
]);
