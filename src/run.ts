/**
 *   text ─1 definition─ Definition ─2 piece─ Piece ─3 solids─ Solids ─4 layout─ Layout ─5 making─ lists
 *        ─6 checks─ sound, stamped or stopped ─7 drawings─ Sheets ─8 report─ SVG, PDF, files ─9 proof─ packet
 *
 * The only file that calls stages, one numbered call each. `buildPacket` runs in a watched worker; what crosses is plain data.
 */
import { explainJudged, judgedNames } from './checks/explain.js';
import { runChecks, type Checked } from './checks/index.js';
import { readBoardsFile, type Boards, type BoardsReading } from './definition/boardsFile.js';
import type { ShopSpec } from './definition/definition.js';
import { readDefinition, type Reading } from './definition/read.js';
import { inShop, readShopFile, standsInShop } from './definition/shopFile.js';
import type { Diagnostic } from './diag/diagnostic.js';
import { hasErrors } from './diag/diagnostic.js';
import type { Location, Locate } from './diag/print.js';
import { drawSheets } from './drawings/index.js';
import { tooLarge } from './drawings/tooLarge.js';
import type { Sheet } from './drawings/picture.js';
import { createKernel } from './geom/kernel.js';
import type { Kernel } from './geom/solid.js';
import { loadFaces } from './io/fonts.js';
import { sha256, shortHash } from './io/hash.js';
import { boardsAfter } from './layout/boards/after.js';
import type { LaidBoards } from './layout/boards/board.js';
import { layoutPiece } from './layout/layout-piece.js';
import { makeLists } from './making/making.js';
import { explain, isUnknown } from './piece/explain.js';
import type { Piece } from './piece/piece.js';
import { resolvePiece } from './piece/resolve.js';
import { proveCards } from './proof/proveCards.js';
import { boardsJson } from './report/boardsJson.js';
import { assemble, sheetHref, type PacketFile } from './report/bundle.js';
import { writePdf } from './report/pdf.js';
import { stlBytes } from './report/stl.js';
import { writeSvgs } from './report/svg.js';
import { unprintableFindings } from './report/unprintable.js';
import { makeSolids } from './solids/make.js';
import type { Solids } from './solids/solids.js';
import { readingNotes, roomFaults, season, type Season } from './wood/moisture.js';

export interface Job {
  readonly what: 'build' | 'check' | 'explain';
  readonly fileName: string;
  readonly text: string;
  /** Shipped definitions by name, for `from`. */
  readonly shipped: Readonly<Record<string, string>>;
  readonly solids?: boolean;
  /** Writes the typeface into each SVG. */
  readonly fonts?: boolean;
  /** How many times the usual number of steps the layout may take. */
  readonly effort?: number;
  /** The shop's own file, where one is named. */
  readonly shop?: { readonly fileName: string; readonly text: string };
  /** The boards that there are, where their file is named. */
  readonly boards?: { readonly fileName: string; readonly text: string };
  /** For `explain`. */
  readonly id?: string;
}
/** A finding with its place in the file: locators do not cross threads. */
export interface Found {
  readonly finding: Diagnostic;
  readonly at: Location;
  /** The file where it stands, when that is not the definition. */
  readonly file?: string;
}
export interface Answer {
  readonly found: readonly Found[];
  /** The piece is at fault: nothing is written. */
  readonly stopped: boolean;
  /** A check fails that nobody answers for: the packet is written, every sheet stamped. */
  readonly failed?: boolean;
  /** Findings about ourselves (exit 70). */
  readonly ours: readonly Diagnostic[];
  readonly folder?: string;
  readonly files?: readonly PacketFile[];
  readonly lines?: readonly string[];
}
export type Progress = (stage: string) => void;

/** One definition to one packet, as plain data. Throws only on our own bugs. */
export async function buildPacket(job: Job, onStage: Progress = () => undefined): Promise<Answer> {
  const found: Diagnostic[] = [];
  let place: (finding: Diagnostic) => Found = (finding) => ({
    finding,
    at: { line: 1, column: 1, endColumn: 1, lineText: '' },
  });
  /** For `explain`: what the piece alone says, until the checks add theirs. */
  let lines: readonly string[] | undefined;
  const answer = (rest: Partial<Answer> = {}): Answer => ({
    found: found.map((finding) => place(finding)),
    stopped: hasErrors(found),
    failed: found.some((f) => f.severity === 'fail'),
    ours: [],
    ...(lines ? { lines } : {}),
    ...rest,
  });
  onStage('definition');
  const reading = readDefinition(job.text, job.fileName, {
    shipped: (name) => job.shipped[name],
    shippedNames: Object.keys(job.shipped).sort(),
  }); // 1
  const shopRead = job.shop && readShopFile(job.shop.text, job.shop.fileName, reading.value?.units ?? 'in');
  const ownWoods = Object.keys({ ...reading.value?.shop?.woods, ...shopRead?.value?.woods });
  const boardsRead = job.boards && readBoardsFile(job.boards.text, job.boards.fileName, ownWoods);
  place = onBoards(placer(reading, job, shopRead), job, boardsRead);
  found.push(...(shopRead?.findings ?? []), ...(boardsRead?.findings ?? []), ...reading.findings);
  if (!reading.value || (job.shop && !shopRead?.value) || (job.boards && !boardsRead?.value)) return answer();
  const definition = shopRead?.value ? inShop(reading.value, shopRead.value, reading.shop) : reading.value;
  onStage('piece');
  const { room, shop, units } = definition;
  found.push(...roomFaults(room, shop?.moisture, units), ...readingNotes(shop ?? {}));
  const resolved = resolvePiece(definition); // 2
  found.push(...resolved.findings);
  const piece = resolved.value;
  if (!piece) return answer();
  if (job.what === 'explain') lines = explain(piece, job.id ?? '');
  onStage('solids');
  const kernel = await createKernel();
  try {
    const made = makeSolids(piece, kernel); // 3
    found.push(...made.findings);
    const solids = made.value;
    if (!solids || hasErrors(found)) return answer();
    const boards = boardsRead?.value;
    const hash = sha256(JSON.stringify(boards ? [definition, boards] : definition));
    const packet = await packetOf(piece, solids, kernel, {
      job,
      hash,
      found,
      onStage,
      season: season(room, shop, units),
      boards,
    });
    return answer(packet);
  } finally {
    kernel.dispose();
  }
}

/** Finds the file and the place of a finding: the definition's, or the shop file's where only that says it. */
function placer(
  reading: Reading,
  job: Job,
  shop: { readonly value?: ShopSpec; readonly locate: Locate; readonly findings: readonly Diagnostic[] } | undefined,
): (finding: Diagnostic) => Found {
  const own = new Set(shop?.findings ?? []);
  return (finding) => {
    const { path, key, span } = finding;
    if (!shop || !job.shop || !(own.has(finding) || standsInShop(path, reading.shop, shop.value)))
      return { finding, at: reading.locate(path, key, span) };
    const there = own.has(finding) ? path : path.slice(1);
    return { finding, at: shop.locate(there, key, span), file: job.shop.fileName };
  };
}

/** What is found in the boards file stands there. */
function onBoards(
  place: (finding: Diagnostic) => Found,
  { boards: file }: Job,
  read: BoardsReading | undefined,
): (finding: Diagnostic) => Found {
  const own = new Set(read?.findings ?? []);
  return (finding) =>
    read && file && own.has(finding)
      ? { finding, at: read.locate(finding.path, finding.key, finding.span), file: file.fileName }
      : place(finding);
}

interface Context {
  readonly job: Job;
  readonly hash: string;
  readonly found: Diagnostic[];
  readonly onStage: Progress;
  readonly season: Season;
  readonly boards: Boards | undefined;
}

async function packetOf(piece: Piece, solids: Solids, kernel: Kernel, ctx: Context): Promise<Partial<Answer>> {
  const { job, hash, found, onStage } = ctx;
  onStage('layout');
  const laid = layoutPiece(piece, job.effort, ctx.boards?.boards); // 4
  onStage('lists');
  const lists = makeLists(
    piece,
    solids.parts.map(({ id, volume }) => ({ id, volume })),
  ); // 5
  found.push(...laid.findings, ...lists.findings);
  if (!laid.value || !lists.value || hasErrors(found)) return {};
  onStage('checks');
  const checked = runChecks({ piece, solids, making: lists.value, season: ctx.season }); // 6
  if (job.what === 'explain') return checked.value ? { lines: explained(piece, checked.value, job.id ?? '') } : {};
  found.push(...checked.findings);
  if (job.what === 'check') return {};
  found.push(...tooLarge(piece, solids));
  if (hasErrors(found)) return {};
  onStage('drawings');
  const faces = loadFaces();
  const sheets = drawSheets({
    piece,
    solids,
    kernel,
    layout: laid.value,
    lists: lists.value,
    faces,
    hash: shortHash(hash),
    findings: found,
    ...(checked.value ? { checks: checked.value } : {}),
    ...(checked.value?.stamp ? { stamp: checked.value.stamp } : {}),
  }); // 7
  found.push(...unprintableFindings(faces, sheets));
  onStage('report');
  const { header } = piece;
  const pdf = await writePdf(sheets, { faces, title: header.title, date: header.date, hash, author: header.maker }); // 8
  const svgs = await writeSvgs(sheets, { faces, embedFonts: job.fonts === true, hrefOf: sheetHref(sheets) });
  onStage('proof');
  const ours = proveCards(pdf, piece, solids, kernel); // 9
  const more = [
    ...records(piece, found, checked.value),
    ...boardsFileAfter(laid.value.boards, ctx.boards),
    ...(job.solids ? stls(piece, solids) : []),
  ];
  return {
    ours,
    folder: folderOf(piece),
    files: assemble({ sheets: sheets as readonly Sheet[], svgs, pdf, title: header.title, more, sha256 }),
  };
}

/** What the piece says of a name, and what the checks judged of it: of an unknown name the one or the other alone. */
function explained(piece: Piece, checked: Checked, id: string): readonly string[] {
  const [own, judged] = [explain(piece, id, judgedNames(checked)), explainJudged(checked, piece, id)];
  return judged.length === 0 ? own : isUnknown(own) ? judged : [...own, ...judged];
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const json = (value: unknown): Uint8Array => utf8(`${JSON.stringify(value, null, 1)}\n`);
const records = (piece: Piece, found: readonly Diagnostic[], checked: Checked | undefined): PacketFile[] => [
  { path: 'piece.json', bytes: json(piece) },
  { path: 'findings.json', bytes: json(found) },
  ...(checked ? [{ path: 'checks.json', bytes: json(judgedOnly(checked)) }] : []),
];
/** All that was judged, passes too, each with how it came about; what is drawn of it stands on the sheets. */
const judgedOnly = ({ checks, ...rest }: Checked): unknown => ({
  checks: checks.map(({ diagrams: _drawn, ...check }) => check),
  ...rest,
});
/** The stock of boards after cutting, offered: the file that was read is left as it is. */
const boardsFileAfter = (laid: LaidBoards | undefined, boards: Boards | undefined): PacketFile[] =>
  laid && boards
    ? [{ path: 'lists/boards-after.json', bytes: utf8(boardsJson(boardsAfter(laid, laid.stock), boards.units)) }]
    : [];
const stls = (piece: Piece, solids: Solids): PacketFile[] =>
  solids.parts.flatMap((solid) => {
    const part = piece.parts.find((p) => p.id === solid.id);
    return part ? [{ path: `solids/${part.mark}-${part.id}.stl`, bytes: stlBytes(solid.mesh, part.place) }] : [];
  });
const slug = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
const folderOf = ({ header }: Piece): string =>
  `${header.number.replace(/[^A-Za-z0-9-]+/g, '-')}-${slug(header.title)}-${header.revision.replace(/[^A-Za-z0-9-]+/g, '-')}`;
