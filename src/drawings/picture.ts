/** The waist: what every sheet ends in. Flat and serialisable; paper millimetres, origin top left, y down; nothing else. */
export type Pen =
  | 'W'
  | 'N'
  | 'D'
  | 'H' // 0.5, 0.25, 0.35, 0.18 solid
  | 'hidden' // N, 3 / 0.75
  | 'centre' // H, 2.4 .5 .2 .5
  | 'plane' // N chain 6 .75 .25 .75
  | 'open' // N, 6 .75 .25 .75 .25 .75
  | 'dots' // round dots 0.5, pitch 1.4
  | 'cutline' // N, 3 / 1.5
  | 'shaft'; // 1.0 solid
export type Tone = 'black' | 'white' | 'grey';
/** Absolute path: M x y, L x y, A r sweep(0|1) large(0|1) x y (circle arcs only), C x1 y1 x2 y2 x y, Z. */
export type Seg =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['A', number, 0 | 1, 0 | 1, number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];
export type Path = readonly Seg[];
export interface StrokeItem {
  readonly kind: 'stroke';
  readonly pen: Pen;
  readonly d: Path;
}
export interface FillItem {
  readonly kind: 'fill';
  readonly tone: Tone;
  readonly d: Path;
  /** The outlines of a figure: the hidden run that follows is its plain text. */
  readonly figure?: true;
}
export interface TextItem {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  /** em, mm. */
  readonly size: number;
  readonly face: 'regular' | 'semibold';
  readonly anchor: 'start' | 'middle' | 'end';
  /** Degrees, always 0 on our sheets. */
  readonly turn: number;
  readonly string: string;
  readonly tone?: Tone;
  /** Present for the invisible run that lies under an outlined fraction: the width (mm) it is stretched to. */
  readonly hidden?: number;
}
export interface GroupItem {
  readonly kind: 'group';
  readonly id: string;
  readonly at?: readonly [number, number];
  readonly clip?: Path;
  readonly role?: string;
  readonly alt?: string;
  /** Sheet id that it leads to. */
  readonly link?: string;
  readonly anchor?: string;
  readonly claim?: Claim;
  readonly items: readonly Item[];
}
/** What a group asserts, for proof: a figure is the distance it spans on the sheet at a scale; a callout is that cut. */
export type Claim =
  | {
      readonly kind: 'distance';
      readonly nm: number;
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
      readonly scale: number;
    }
  | { readonly kind: 'card'; readonly part: string };
export type Item = StrokeItem | FillItem | TextItem | GroupItem;
export type Picture = readonly Item[];

/** A table is data beside the picture; it feeds the drawn grid and the CSV. */
export interface Table {
  readonly id: string;
  readonly columns: readonly { readonly id: string; readonly label: string; readonly align: 'left' | 'right' }[];
  readonly rows: readonly (readonly string[])[];
}
export interface Sheet {
  readonly id: string;
  readonly title: string;
  /** `drawings`, `cards`, `nesting`, `lists`: the folder its SVG goes to. */
  readonly folder: 'drawings' | 'cards' | 'nesting' | 'lists';
  /** Paper, mm. */
  readonly size: readonly [number, number];
  readonly alt: string;
  readonly picture: Picture;
  readonly tables: readonly Table[];
}
