/** The mould in three dimensions. Loaded only when it is looked at: it brings three.js with it. */
import {
  AmbientLight,
  Box3,
  Color,
  DirectionalLight,
  DoubleSide,
  Group,
  MathUtils,
  MeshBasicMaterial,
  OrthographicCamera,
  Plane,
  Scene,
  Vector3,
  WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import { lifts } from './apart';
import { type CutPiece, cutPiece, drawOutline, letGo } from './cut_piece';
import type { Look } from './look';
import { boxOf, type Piece } from './solids';

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
}

/** A picture of the mould. */
export interface Picture {
  show(pieces: Piece[]): void;
  draw(seen: Seen): void;
  /** The piece under a point, in shares of the picture's width and height from the top left. */
  pieceAt(x: number, y: number): Piece | null;
  /** The picture as a PNG. */
  saved(): Promise<Blob | null>;
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

  function show(solids: Piece[]): void {
    pieces.forEach(letGo);
    mould.clear();
    cutAt = null;
    box = boxAround(solids);
    const size = box.getSize(new Vector3()).length();
    pieces = solids.map((piece, at) => cutPiece(piece, plane, size, at));
    lifted = lifts(solids);
    mould.add(...pieces.map((piece) => piece.group));
  }

  function draw({ look, cut, apart }: Seen): void {
    fitCanvas(renderer, canvas);
    pieces.forEach((piece, at) => {
      piece.group.position.z = (lifted[at] ?? 0) * apart;
    });
    place(cut);
    aim(camera, look, boxApart(box, Math.max(0, ...lifted) * apart), canvas);
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
  }

  const one = new WebGLRenderTarget(1, 1);
  function pieceAt(x: number, y: number): Piece | null {
    const { clientWidth: width, clientHeight: height } = canvas;
    camera.setViewOffset(width, height, Math.floor(x * width), Math.floor(y * height), 1, 1);
    const skins = pieces.map(({ skin }) => skin.material);
    pieces.forEach((piece, at) => number(piece, at + 1, plane));
    const clear = renderer.getClearColor(new Color());
    renderer.setClearColor('#000000');
    renderer.setRenderTarget(one);
    renderer.render(scene, camera);
    const pixel = new Uint8Array(4);
    renderer.readRenderTargetPixels(one, 0, 0, 1, 1, pixel);
    renderer.setRenderTarget(null);
    renderer.setClearColor(clear);
    pieces.forEach(({ skin, rest }, at) => {
      (skin.material as MeshBasicMaterial).dispose();
      skin.material = skins[at] ?? skin.material;
      rest.visible = true;
    });
    camera.clearViewOffset();
    return pieces[(pixel[0] ?? 0) - 1]?.piece ?? null;
  }

  return {
    show,
    draw,
    pieceAt,
    saved: () => {
      renderer.render(scene, camera);
      return new Promise((done) => canvas.toBlob(done, 'image/png'));
    },
    leave: () => {
      pieces.forEach(letGo);
      one.dispose();
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
