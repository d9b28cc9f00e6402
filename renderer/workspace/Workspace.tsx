import { useStore } from 'zustand';
import { ComparisonMargin } from '../compare/ComparisonMargin.tsx';
import { FindingMargin } from '../finding/FindingMargin.tsx';
import { useProgram } from '../program/programContext.ts';
import { VehicleMargin } from '../vehicle/VehicleMargin.tsx';
import { Centre } from './Centre.tsx';
import { TopLine } from './TopLine.tsx';

/** Traces in the middle, lists on one side, the finding on the other, and above it all what is known, in words. */
export function Workspace() {
  const { workspace } = useProgram();
  const left = useStore(workspace, (state) => state.leftMargin);
  const right = useStore(workspace, (state) => state.rightMargin);
  const comparing = useStore(workspace, (state) => state.compare !== null);
  return (
    <div className="workspace" data-left={left} data-right={right}>
      <TopLine />
      {left && <VehicleMargin />}
      <Centre />
      {right && (comparing ? <ComparisonMargin /> : <FindingMargin />)}
    </div>
  );
}
