import type { Channel } from '../../capture/channel.ts';
import { ROLE_FACTS } from '../../capture/roles.ts';
import type { Seconds } from '../../units/quantities.ts';
import { counted, round, span } from '../../words/numbers.ts';
import { answered, noSuchChannel, notOpen } from '../serviceProblems.ts';
import { stretchFacts } from '../stretchFacts.ts';
import type { SlowAnswer } from './slowAnswer.ts';

/** What a person who sees the trace sees in it, in words: one sentence or two a channel. */
export const describe: SlowAnswer<'describe'> = ({ key, channelIds, startS, endS }, { find }) => {
  const capture = find(key);
  if (capture === null) return notOpen();
  const words: string[] = [];
  for (const id of channelIds) {
    const channel = capture.channels.find((channel) => channel.id === id);
    if (channel === undefined) return noSuchChannel(capture.name);
    words.push(describeChannel(channel, startS, endS));
  }
  return answered(words);
};

function describeChannel(channel: Channel, startS: Seconds, endS: Seconds): string {
  const { words, digits } = ROLE_FACTS[channel.role];
  const what = channel.role === 'other' ? `Channel “${channel.name}”` : words;
  const bank = channel.bank === null ? '' : `, bank ${channel.bank}`;
  const unit = channel.unit === '1' ? '' : ` ${channel.unit}`;
  const where = `${what}${bank}, from ${span(startS, endS, 1, 's')}`;
  const facts = stretchFacts(channel, startS, endS);
  if (facts === null) return `${where}: no values were recorded.`;
  const value = (number: number): string => `${round(number, digits)}${unit}`;
  const switches = facts.switches === null ? '' : ` It crosses its switch point ${counted(facts.switches, 'time')}.`;
  return (
    `${where}: ${counted(facts.values, 'value')}, lowest ${value(facts.min)}, highest ${value(facts.max)}, ` +
    `mean ${value(facts.mean)}.${switches}`
  );
}
