/** The mould in three dimensions. Loaded only when it is looked at: it brings three.js with it. */
import {
  AmbientLight,
  Box3,
  Color,
  DirectionalLight,
  DoubleSide,
  Group,
  type Material,
  MathUtils,
  MeshBasicMaterial,
  OrthographicCamera,
  Plane,
  Scene,
  Vector3,
  WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import { isInTheWay, liftOut, lifts } from './apart';
import { type CutPiece, cutPiece, drawOutline, letGo } from './cut_piece';
import type { Look } from './look';
import type { DrawnMap } from './map';
import { told } from './map_paint';
import { type Offered, written } from './numbers';
import { drawFace, type PaintedPiece, painted, tellValues } from './painted_piece';
import { boxOf, type Piece } from './solids';
import { UNDER_A_MAP } from './tones';

/** A plane through the mould: along it or across it, and how far in, from 0 (whole) to 1. */
export interface Cut {
  way: 'along' | 'across';
  at: number;
}

/** What is to be seen. */
export interface Seen {
  look: Look;
  cut: Cut;
  /** How far the mould is taken apart, 0 to 1. */
  apart: number;
  /** How far the pattern is drawn out of the sand, 0 to 1. */
  out: number;
}

/** What is read off a picture with a map: the value at a point, and the numbers to write. */
export interface Reading {
  /** In pixels of the page from the top left. */
  valueAt(x: number, y: number): number | null;
  numbers: Offered[];
}

/** A picture of the mould. */
export interface Picture {
  /** Shows pieces, with a map on the metal where there is one. */
  show(pieces: Piece[], map?: DrawnMap | null): void;
  draw(seen: Seen): void;
  /** The piece under a point, in shares of the picture's width and height from the top left. */
  pieceAt(x: number, y: number): Piece | null;
  /** How far in a cut along the mould lies that goes through a place across it, mm. */
  alongAt(y: number): number;
  /** The values of the map as the picture stands; none without a map. */
  read(): Reading | null;
  /** Draws anew, so that the canvas holds the picture. */
  again(): void;
  leave(): void;
}

/** Most pixels for one of the page: beyond 2 nothing is seen but heat. */
const FINEST = 2;

/** What it is drawn on: the paper of the page. */
const PAPER = '#fcfbf7';

/** Paper left around the mould. */
const AROUND = 1.06;

/** Draws into a canvas; throws where the browser cannot. */
export function pictureIn(canvas: HTMLCanvasElement): Picture {
  const renderer = new WebGLRenderer({ canvas, antialias: true, stencil: true });
  renderer.localClippingEnabled = true;
  renderer.setClearColor(PAPER);
  const scene = new Scene();
  const camera = new OrthographicCamera();
  camera.up.set(0, 0, 1);
  const light = new DirectionalLight('#ffffff', 1.9);
  scene.add(new AmbientLight('#ffffff', 1.5), light, light.target);
  const plane = new Plane(new Vector3(0, 1, 0), 0);
  const mould = new Group();
  scene.add(mould);
  let pieces: CutPiece[] = [];
  let lifted: number[] = [];
  let box = new Box3();
  /** Where the outlines are drawn already. */
  let cutAt: Cut | null = null;
  let map: DrawnMap | null = null;
  let paintedPieces: PaintedPiece[] = [];
  let lifting = 0;

  function show(solids: Piece[], withMap: DrawnMap | null = null): void {
    pieces.forEach(letGo);
    mould.clear();
    cutAt = null;
    box = boxAround(solids);
    const size = box.getSize(new Vector3()).length();
    map = withMap;
    pieces = solids.map((piece, at) =>
      cutPiece(piece, plane, size, at, map && isMetal(piece) ? UNDER_A_MAP : undefined),
    );
    paintedPieces = pieces.flatMap((piece, at) =>
      map && isMetal(piece.piece) ? [painted(piece, map, plane, size, at)] : [],
    );
    lifted = lifts(solids);
    mould.add(...pieces.map((piece) => piece.group));
  }

  function draw({ look, cut, apart, out }: Seen): void {
    fitCanvas(renderer, canvas);
    lifting = apart;
    const tall = box.max.z - box.min.z;
    let most = 0;
    pieces.forEach(({ group, piece }, at) => {
      const lift = (lifted[at] ?? 0) * apart + liftOut(piece, out) * tall;
      group.position.z = lift;
      group.visible = out === 0 || isInTheWay(piece);
      most = Math.max(most, lift);
    });
    place(cut);
    aim(camera, look, boxApart(box, most), canvas);
    light.position.copy(camera.position);
    // The lamp hangs to the left and above whoever looks, as on a drawing board.
    light.position.addScaledVector(new Vector3(-0.5, 0.5, 0.3).applyQuaternion(camera.quaternion),
      camera.position.distanceTo(light.target.position));
    renderer.render(scene, camera);
  }

  function place({ way, at }: Cut): void {
    const along = way === 'along';
    const [low, high] = along ? [box.min.y, box.max.y] : [box.min.x, box.max.x];
    // A hair outside at nought, so that the whole mould is drawn without a cap.
    const where = along ? MathUtils.lerp(low - 0.1, high, at) : MathUtils.lerp(high + 0.1, low, at);
    const moved = way !== cutAt?.way || at !== cutAt.at;
    cutAt = { way, at };
    plane.normal.set(along ? 0 : -1, along ? 1 : 0, 0);
    plane.constant = along ? -where : where;
    const middle = box.getCenter(new Vector3());
    for (const piece of pieces) {
      const { cap } = piece;
      if (moved) drawOutline(piece, { axis: along ? 1 : 0, at: where });
      cap.position.set(along ? middle.x : where, along ? where : middle.y, middle.z);
      cap.rotation.set(Math.PI / 2, along ? 0 : Math.PI / 2, 0);
    }
    const field = map?.field;
    if (!moved || !map || !field) return;
    for (const piece of paintedPieces) {
      drawFace(piece, field, map, { axis: along ? 1 : 0, at: where });
    }
  }

  const whole = new WebGLRenderTarget(1, 1, { stencilBuffer: true });
  function read(): Reading | null {
    if (!map) return null;
    const { head } = map;
    const { clientWidth: width, clientHeight: height } = canvas;
    whole.setSize(width, height);
    const others = pieces.filter((cut) => !paintedPieces.some((one) => one.cut === cut));
    const skins = others.map(({ skin }) => skin.material);
    others.forEach((piece) => number(piece, 0, plane));
    paintedPieces.forEach((piece) => tellValues(piece, true));
    const bytes = pixelsOf(whole, width, height);
    paintedPieces.forEach((piece) => tellValues(piece, false));
    others.forEach((piece, at) => plainAgain(piece, skins[at]));
    const valueAt = (x: number, y: number) => {
      const [column, row] = [Math.round(x), height - 1 - Math.round(y)];
      if (column < 0 || row < 0 || column >= width || row >= height) return null;
      const at = 4 * (column + width * row);
      return told(head, bytes[at] ?? 0, bytes[at + 1] ?? 0, bytes[at + 2] ?? 0);
    };
    const metal = pieces.findIndex(({ piece }) => isMetal(piece));
    const up = (lifted[metal] ?? 0) * lifting;
    const all = paintedPieces.flatMap((piece) => [...piece.numbers, ...piece.onFace]);
    const marks = head.marks.map(({ at_mm: [x = 0, y = 0, z = 0], value }) => ({
      at: [x, y, z] as const,
      value,
      marked: true,
    }));
    const offered = [...marks, ...all].map(({ at: [x, y, z], value, marked }) => {
      const on = new Vector3(x, y, z + up).project(camera);
      return { x: ((on.x + 1) / 2) * width, y: ((1 - on.y) / 2) * height, value, marked };
    });
    return { valueAt, numbers: written(offered, valueAt, head.high - head.low) };
  }

  /** The scene drawn on black into a target, as bytes. */
  function pixelsOf(target: WebGLRenderTarget, width: number, height: number): Uint8Array {
    const clear = renderer.getClearColor(new Color());
    renderer.setClearColor('#000000');
    renderer.setRenderTarget(target);
    renderer.render(scene, camera);
    const bytes = new Uint8Array(4 * width * height);
    renderer.readRenderTargetPixels(target, 0, 0, width, height, bytes);
    renderer.setRenderTarget(null);
    renderer.setClearColor(clear);
    return bytes;
  }

  const one = new WebGLRenderTarget(1, 1);
  function pieceAt(x: number, y: number): Piece | null {
    const { clientWidth: width, clientHeight: height } = canvas;
    camera.setViewOffset(width, height, Math.floor(x * width), Math.floor(y * height), 1, 1);
    const skins = pieces.map(({ skin }) => skin.material);
    pieces.forEach((piece, at) => number(piece, at + 1, plane));
    const pixel = pixelsOf(one, 1, 1);
    pieces.forEach((piece, at) => plainAgain(piece, skins[at]));
    camera.clearViewOffset();
    return pieces[(pixel[0] ?? 0) - 1]?.piece ?? null;
  }

  return {
    show,
    draw,
    pieceAt,
    read,
    alongAt: (y) => MathUtils.clamp(MathUtils.inverseLerp(box.min.y, box.max.y, y), 0, 1),
    again: () => renderer.render(scene, camera),
    leave: () => {
      pieces.forEach(letGo);
      one.dispose();
      whole.dispose();
      renderer.dispose();
    },
  };
}

/** Paints a piece in its number; its inner faces too, since they stand for what is cut. */
function number({ skin, rest }: CutPiece, at: number, plane: Plane): void {
  const paint = new MeshBasicMaterial({ side: DoubleSide, clippingPlanes: [plane] });
  paint.color.setRGB(at / 255, 0, 0);
  skin.material = paint;
  rest.visible = false;
}

/** Takes the number off again. */
function plainAgain({ skin, rest }: CutPiece, was?: Material | Material[]): void {
  (skin.material as Material).dispose();
  skin.material = was ?? skin.material;
  rest.visible = true;
}

const isMetal = ({ kind }: Piece) => kind === 'casting' || kind === 'rigging';

function boxAround(pieces: Piece[]): Box3 {
  const box = new Box3();
  for (const { points } of pieces) {
    const [low, high] = boxOf(points);
    box.expandByPoint(new Vector3(...low)).expandByPoint(new Vector3(...high));
  }
  return box;
}

function boxApart(box: Box3, lift: number): Box3 {
  const apart = box.clone();
  apart.max.z += lift;
  return apart;
}

/** As many pixels as the canvas has on the page. */
function fitCanvas(renderer: WebGLRenderer, canvas: HTMLCanvasElement): void {
  renderer.setPixelRatio(Math.min(devicePixelRatio, FINEST));
  renderer.setSize(canvas.clientWidth, canvas.clientHeight, false);
}

/** Looks at the box from a side; its size in the picture stays the same while it is turned. */
function aim(camera: OrthographicCamera, look: Look, box: Box3, canvas: HTMLCanvasElement): void {
  const middle = box.getCenter(new Vector3());
  const size = box.getSize(new Vector3());
  const round = Math.hypot(size.x, size.y) / 2;
  const tip = MathUtils.degToRad(Math.min(look.tip, 89.9));
  const turn = MathUtils.degToRad(look.turn);
  const half = round * Math.abs(Math.sin(tip)) + (size.z / 2) * Math.cos(tip);
  const aspect = canvas.clientWidth / Math.max(1, canvas.clientHeight);
  const tall = (AROUND * Math.max(half, round / aspect)) / look.near;
  const far = 2 * size.length();
  camera.left = -tall * aspect;
  camera.right = tall * aspect;
  camera.top = tall;
  camera.bottom = -tall;
  camera.near = 0;
  camera.far = 2 * far;
  const level = Math.cos(tip);
  camera.position.set(level * Math.cos(turn), level * Math.sin(turn), Math.sin(tip));
  camera.position.multiplyScalar(far).add(middle);
  camera.lookAt(middle);
  camera.updateProjectionMatrix();
}
