// The order of a start: hear the shell, learn what is kept, open what was asked for or what was open last.

import type { Picked } from '../../core/bridge/shellMessages.ts';
import { keepOffers } from '../actions/blindReading.ts';
import { reopenCaptures } from '../actions/findCaptures.ts';
import { keepInStep } from '../actions/keepInStep.ts';
import { keepModelTraces } from '../actions/keepModelTraces.ts';
import { keepOfferScore } from '../actions/keepOfferScore.ts';
import { keepScoring } from '../actions/keepScoring.ts';
import { keepTitle } from '../actions/keepTitle.ts';
import { keepView, saveView } from '../actions/keepView.ts';
import { openPicked } from '../actions/openCaptures.ts';
import { openVehicle } from '../actions/openVehicle.ts';
import { refreshShelf } from '../actions/refreshShelf.ts';
import { keepCommandStates } from '../commands/keepCommandStates.ts';
import { runCommand } from '../commands/runCommand.ts';
import { recordOf } from '../state/recordStore.ts';
import type { Program } from './program.ts';

/** Starts everything that runs by itself and opens the first document. Resolves when it is open. */
export async function startProgram(program: Program): Promise<void> {
  const asked: Picked[] = [];
  let started = false;
  hearShell(program, (picks) => {
    if (started) void openPicked(program, picks);
    else asked.push(...picks);
  });
  keepEverything(program);
  try {
    const [settings, recent] = await Promise.all([
      program.shell.settings(null),
      program.shell.recent(null),
      refreshShelf(program),
    ]);
    program.settings.setState({ settings });
    started = true;
    if (asked.length > 0) await openPicked(program, asked, 'new');
    else if (recent.lastVehicle !== null) await openVehicle(program, recent.lastVehicle);
  } finally {
    started = true;
    program.shelf.setState({ begun: true }); // a start page, whatever went wrong: an empty window says nothing
  }
}

function keepEverything(program: Program): void {
  program.saver.start();
  keepScoring(program);
  keepOffers(program);
  keepOfferScore(program);
  keepModelTraces(program);
  keepInStep(program);
  keepView(program);
  keepTitle(program);
  keepCommandStates(program);
}

function hearShell(program: Program, open: (picks: readonly Picked[]) => void): void {
  const { shell, core } = program;
  shell.on('command', ({ id }) => runCommand(program, id));
  shell.on('openCaptures', open);
  shell.on('closing', () => void close(program));
  shell.on('coreLost', () => {
    core.lose();
    program.notices.getState().say('The part of the program that reads captures stopped and is started again.');
    void reopenCaptures(program);
  });
}

/** Everything is written down before the window goes; what cannot be saved is told by the shell, which asks. */
async function close(program: Program): Promise<void> {
  if (recordOf(program.record.getState()) !== null) {
    program.record.getState().endGesture(); // a drag whose end was never heard is not saved otherwise
    await saveView(program);
    await program.saver.flush();
  }
  await program.shell.readyToClose(null);
}
