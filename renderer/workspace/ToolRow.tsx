import {
  ArrowLeft,
  ArrowRight,
  BetweenVerticalStart,
  Fullscreen,
  Hand,
  type LucideIcon,
  MoveHorizontal,
  ScanSearch,
  StickyNote,
  ZoomIn,
  ZoomOut,
} from 'lucide-react';
import { useStore } from 'zustand';
import { CommandButton } from '../commands/CommandButton.tsx';
import type { PointerTool } from '../plot/traceStackProps.ts';
import { useProgram } from '../program/programContext.ts';
import { Button } from '../widgets/Button.tsx';
import { Toolbar } from '../widgets/Toolbar.tsx';

const TOOLS: readonly { id: PointerTool; words: string; icon: LucideIcon; tip: string }[] = [
  { id: 'mark', words: 'Mark', icon: BetweenVerticalStart, tip: 'Drag over the traces to mark a window' },
  { id: 'pan', words: 'Move', icon: Hand, tip: 'Drag the traces sideways' },
  { id: 'zoom', words: 'Zoom', icon: ScanSearch, tip: 'Drag over a stretch to see it closer' },
  { id: 'note', words: 'Note', icon: StickyNote, tip: 'Click a moment or drag a stretch to pin a note' },
];

/** What a drag over the traces does, and the ways through the views. */
export function ToolRow() {
  const { workspace } = useProgram();
  const tool = useStore(workspace, (state) => state.tool);
  return (
    <Toolbar label="Traces" className="toolRow">
      {TOOLS.map(({ id, words, icon, tip }) => (
        <Button
          key={id}
          look="quiet"
          icon={icon}
          tip={tip}
          pressed={tool === id}
          onPress={() => workspace.getState().set({ tool: id })}
        >
          {words}
        </Button>
      ))}
      <CommandButton id="view.whole" icon={MoveHorizontal} words="Whole" className="apart" />
      <CommandButton id="view.toWindow" icon={Fullscreen} words="Window" />
      <CommandButton id="view.in" icon={ZoomIn} signOnly />
      <CommandButton id="view.out" icon={ZoomOut} signOnly />
      <CommandButton id="view.back" icon={ArrowLeft} signOnly />
      <CommandButton id="view.forward" icon={ArrowRight} signOnly />
    </Toolbar>
  );
}
