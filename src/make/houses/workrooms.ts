/** The invented workrooms whose past orders the bench reads. */
import type { Style } from './style';
import { carrabeen } from './styles/carrabeen';
import { cressfold } from './styles/cressfold';
import { foxglove } from './styles/foxglove';
import { garthow } from './styles/garthow';
import { quillhollow } from './styles/quillhollow';

export const STYLES: readonly Style[] = [quillhollow, cressfold, garthow, foxglove, carrabeen];
