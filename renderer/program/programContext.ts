import { createContext, useContext } from 'react';
import type { Program } from './program.ts';

const ProgramContext = createContext<Program | null>(null);

export const ProgramProvider = ProgramContext.Provider;

/** The program that this part of the page belongs to. */
export function useProgram(): Program {
  const program = useContext(ProgramContext);
  if (program === null) throw new Error('This component stands outside ProgramProvider.');
  return program;
}
