import type { Random } from '../random.ts';
import type { BankParameters, VehicleParameters } from '../vehicle.ts';
import { CLASSES } from './classes.ts';
import { drawVehicle } from './drawVehicle.ts';
import type { CasePlan } from './planCase.ts';
import type { DrawMode } from './ranges.ts';

/** The vehicle of a plan, with its fault in the bank that is judged. */
export function buildVehicle(plan: CasePlan, random: Random, mode: DrawMode): VehicleParameters {
  const other = random.pick(CLASSES);
  const classes = plan.twoBanks ? (plan.bank === 1 ? [plan.kind, other] : [other, plan.kind]) : [plan.kind];
  const vehicle = drawVehicle({ wideband: plan.wideband, twoBanks: plan.twoBanks, classes }, random, mode);
  const faults = random.fork(9);
  const bankAt = plan.bank - 1;
  const put = (bank: BankParameters, k: number) => (k === bankAt && plan.fault ? plan.fault.apply(bank, faults) : bank);
  // One car in twelve has a second brick, like the first, and a third sensor behind it.
  const second = random.chance(0.08);
  const banks = vehicle.banks.map(put).map((bank) => (second ? { ...bank, secondBrick: bank.converter } : bank));
  return { ...vehicle, banks, exchanged: exchangedOf(plan.fault?.id ?? null) };
}

/** How the whole vehicle carries a fault that lies in its harness. */
function exchangedOf(faultId: string | null): VehicleParameters['exchanged'] {
  if (faultId === 'frontRearExchanged') return 'frontRear';
  return faultId === 'banksExchanged' ? 'banks' : 'none';
}
