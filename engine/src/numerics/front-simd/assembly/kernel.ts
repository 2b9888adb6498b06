export { addUpdate, eliminate } from './elimination';
export { backward, forward } from './substitution';
