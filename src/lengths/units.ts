/** What inch files say in SI: exact by definition (international yard and pound, standard gravity), but for PSI, which follows. */
export const INCH_MM = 25.4;
export const FOOT_M = 0.3048;
export const POUND_KG = 0.45359237;
export const POUND_FORCE_N = 4.4482216152605;
export const PSI_PA = 6894.757293168;
