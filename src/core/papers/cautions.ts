/** What is said where work can hurt: one sentence each, and who decides. None says that a thing is safe. */
/** Sources: ANSI/WCMA A100.1-2022; 16 CFR 1120.3(e) and (f); SOR/2019-97 of Canada. */
export const CORDS =
  'Operating cords and loops are a strangulation hazard for children (in the United States ANSI/WCMA A100.1-2022 and 16 CFR 1120.3, in Canada SOR/2019-97); local codes and licensed practice decide.';

/** Source: NFPA 701, which tests layers as they are sewn together. */
export const FLAME =
  'A flame certificate belongs to a lot, and two certificates say nothing of two cloths sewn together; local codes and the authority on site decide.';

/** Source: NFPA 101, 7.5.2.2.1. */
export const EXITS =
  'Draperies never cover an exit door nor hide an exit (NFPA 101, 7.5.2.2.1); the authority on site decides.';

export const HEATERS =
  'Heater or lamp below or beside: its own maker’s clearance ____________; local codes decide.';

/** Common practice, no source. */
export const LOAD =
  'Drawn back, the stack’s brackets carry nearly all of the weight; anchors are the installer’s judgement, by local codes.';

/** No ladder is named: who climbs decides. */
export const ACCESS = 'means of access chosen on site';

export const MOTORS = 'A licensed electrician connects a motor; local codes decide.';
