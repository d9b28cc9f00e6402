import { registry } from '../registry.ts';
import { amplitudeRatio } from './amplitudeRatio.ts';
import { breakthroughShare } from './breakthroughShare.ts';
import { downstreamCrossings } from './downstreamCrossings.ts';
import { downstreamFastV } from './downstreamFastV.ts';
import { downstreamMaxV } from './downstreamMaxV.ts';
import { downstreamMeanV } from './downstreamMeanV.ts';
import { downstreamMinV } from './downstreamMinV.ts';
import { downstreamRichShare } from './downstreamRichShare.ts';
import { downstreamSlowV } from './downstreamSlowV.ts';
import { downstreamSpreadV } from './downstreamSpreadV.ts';
import { downstreamSwitchHz } from './downstreamSwitchHz.ts';
import { downstreamFallS, downstreamRiseS, upstreamFallS, upstreamRiseS } from './edgeTimes.ts';
import { fastSwingRatio } from './fastSwingRatio.ts';
import { fillAir } from './fillAir.ts';
import { fillS } from './fillS.ts';
import { lagS } from './lagS.ts';
import type { Measure } from './measure.ts';
import { pathRatio } from './pathRatio.ts';
import { recoveryAir } from './recoveryAir.ts';
import { recoveryS } from './recoveryS.ts';
import { storageG, storageS } from './storageG.ts';
import { switchRatio } from './switchRatio.ts';
import { thirdSwingRatio } from './thirdSwingRatio.ts';
import { upstreamCrossings } from './upstreamCrossings.ts';
import { upstreamMaxV } from './upstreamMaxV.ts';
import { upstreamMinV } from './upstreamMinV.ts';
import { upstreamRichShare } from './upstreamRichShare.ts';
import { upstreamSwitchHz } from './upstreamSwitchHz.ts';
import { waveCoherence } from './waveCoherence.ts';
import { waveGain } from './waveGain.ts';

/** Every measure, in the order in which people see them. */
export const MEASURES: readonly Measure[] = registry('measure', (measure) => measure.id, [
  switchRatio,
  amplitudeRatio,
  fastSwingRatio,
  pathRatio,
  waveGain,
  waveCoherence,
  lagS,
  breakthroughShare,
  recoveryS,
  recoveryAir,
  fillS,
  fillAir,
  storageG,
  storageS,
  thirdSwingRatio,
  upstreamSwitchHz,
  downstreamSwitchHz,
  upstreamCrossings,
  downstreamCrossings,
  upstreamMinV,
  upstreamMaxV,
  upstreamRichShare,
  upstreamRiseS,
  upstreamFallS,
  downstreamMeanV,
  downstreamSpreadV,
  downstreamSlowV,
  downstreamFastV,
  downstreamMinV,
  downstreamMaxV,
  downstreamRichShare,
  downstreamRiseS,
  downstreamFallS,
]);
