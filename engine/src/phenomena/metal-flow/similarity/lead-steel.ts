import { type LeadBlock, lead } from '../../../steel/lead.ts';
import { lawSteel } from '../law-steel.ts';
import type { FlowSteel } from '../problem.ts';

/** 1/s. */
const referenceRate = 1;

/** Lead as the flow model takes it, at room temperature; the law, its doubt and its range are those of `lead`. */
export const leadSteel = (block?: LeadBlock): FlowSteel => lawSteel(lead(block), referenceRate);
