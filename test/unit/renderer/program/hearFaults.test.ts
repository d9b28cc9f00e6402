import { describe, expect, it } from 'vitest';
import { hearFaults } from '../../../../renderer/program/hearFaults.ts';
import { startProgram } from '../../../../renderer/program/startProgram.ts';
import { createNoticeStore } from '../../../../renderer/state/noticeStore.ts';
import { startWindow } from '../../../support/windowProgram.ts';

describe('a fault that nobody waits for', () => {
  it('is told on the page, with what to do', () => {
    const page = new EventTarget();
    const notices = createNoticeStore();
    hearFaults({ notices }, page);
    page.dispatchEvent(new Event('unhandledrejection'));
    expect(notices.getState().problems.map(({ problem }) => problem.id)).toEqual(['fault']);
  });
});

describe('a start at which the shell gives no list of what is kept', () => {
  it('still ends with a start page, not with an empty window', async () => {
    const { program } = await startWindow();
    program.shelf.setState({ begun: false });
    Object.assign(program.shell, { recent: () => Promise.reject(new Error('The program could not do this.')) });
    await expect(startProgram(program)).rejects.toThrow('could not do this');
    expect(program.shelf.getState().begun).toBe(true);
  });
});
