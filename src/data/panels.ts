/** Sheet goods by kind. Specific gravity: mass over volume as it is used. */
export interface Panel {
  readonly id: string;
  readonly name: string;
  readonly gravity: { readonly value: number; readonly source: string };
  /** Whether its faces have a grain to be kept. */
  readonly grain: boolean;
}
const TABLE = 'Wood Handbook, FPL-GTR-190, table 12-1';
export const PANELS: readonly Panel[] = [
  { id: 'plywood-birch', name: 'Birch plywood', gravity: { value: 0.65, source: 'from memory' }, grain: true },
  { id: 'plywood', name: 'Plywood', gravity: { value: 0.6, source: `${TABLE}, upper end` }, grain: true },
  { id: 'plywood-oak', name: 'Oak plywood', gravity: { value: 0.6, source: `${TABLE}, upper end` }, grain: true },
  { id: 'plywood-maple', name: 'Maple plywood', gravity: { value: 0.6, source: `${TABLE}, upper end` }, grain: true },
  { id: 'plywood-walnut', name: 'Walnut plywood', gravity: { value: 0.6, source: `${TABLE}, upper end` }, grain: true },
  { id: 'plywood-cherry', name: 'Cherry plywood', gravity: { value: 0.6, source: `${TABLE}, upper end` }, grain: true },
  { id: 'mdf', name: 'MDF', gravity: { value: 0.8, source: `${TABLE}, middle` }, grain: false },
  { id: 'mdf-veneered', name: 'Veneered MDF', gravity: { value: 0.8, source: `${TABLE}, middle` }, grain: true },
  { id: 'particleboard', name: 'Particleboard', gravity: { value: 0.7, source: `${TABLE}, middle` }, grain: false },
  { id: 'hardboard', name: 'Hardboard', gravity: { value: 0.95, source: `${TABLE}, middle` }, grain: false },
];
export const panelById = (id: string): Panel | undefined => PANELS.find((p) => p.id === id);
