(function () {
"use strict";
// On a narrow screen the chapters are folded; on paper, and where a link leads into one, they are open.
var folds = Array.prototype.slice.call(document.querySelectorAll("details"));
var narrow = window.matchMedia("(max-width: 44rem)");
function fold() { folds.forEach(function (one) { one.open = !narrow.matches; }); }
function unfold() { folds.forEach(function (one) { one.open = true; }); }
function follow() {
  var to = location.hash.length > 1 && document.getElementById(location.hash.slice(1));
  var one = to && to.querySelector("details");
  if (one) { one.open = true; to.scrollIntoView(); }
}
if (narrow.matches) { fold(); }
follow();
window.addEventListener("hashchange", follow);
window.addEventListener("beforeprint", unfold);
window.addEventListener("afterprint", fold);
var bay = JSON.parse(document.getElementById("bay").textContent);
var $ = function (id) { return document.getElementById(id); };
var canvas = $("canvas");
var gl = canvas.getContext("webgl2", { antialias: true, preserveDrawingBuffer: true });
// Without it the pictures, which need no script, must do.
if (!gl) { return; }
$("turn").hidden = false;
var m4 = twgl.m4;

function colour(text) {
  return [1, 3, 5].map(function (at) { return parseInt(text.substr(at, 2), 16); });
}
var colours = bay.colours.map(colour);

var programs = twgl.createProgramInfo(gl, [
  "#version 300 es\n" +
  "in vec3 position; in vec3 normal; in vec4 colour;" +
  "uniform mat4 eye; uniform mat4 place; out vec3 turned; out vec4 paint;" +
  "void main(){ turned = mat3(place) * normal; paint = colour; gl_Position = eye * place * vec4(position, 1.0); }",
  "#version 300 es\n" +
  "precision highp float; in vec3 turned; in vec4 paint; uniform vec3 toward; out vec4 shown;" +
  "void main(){ float light = 1.0;" +
  "if (paint.a > 0.5) { vec3 n = normalize(turned);" +
  "light = 0.58 + 0.14 * n.z + 0.2 * max(dot(n, normalize(vec3(-0.5, -0.7, 0.6))), 0.0) + 0.2 * max(dot(n, toward), 0.0); }" +
  "shown = vec4(paint.rgb * min(light, 1.0), 1.0); }"
]);

function faces(piece) {
  var position = [], normal = [], paint = [];
  piece.faces.forEach(function (face) {
    var rgb = colours[face[0]], lit = face[1] ? 0 : 255, at = face[2].map(function (v) { return v / 1e5; });
    var count = at.length / 3, n = [0, 0, 0], i, j, k;
    for (i = 0; i < count; i++) {
      j = (i + 1) % count;
      for (k = 0; k < 3; k++) {
        var a = (k + 1) % 3, b = (k + 2) % 3;
        n[k] += (at[3 * i + a] - at[3 * j + a]) * (at[3 * i + b] + at[3 * j + b]);
      }
    }
    var size = Math.hypot(n[0], n[1], n[2]) || 1;
    for (i = 2; i < count; i++) {
      [0, i - 1, i].forEach(function (c) {
        position.push(at[3 * c], at[3 * c + 1], at[3 * c + 2]);
        normal.push(n[0] / size, n[1] / size, n[2] / size);
        paint.push(rgb[0], rgb[1], rgb[2], lit);
      });
    }
  });
  return twgl.createBufferInfoFromArrays(gl, {
    position: { numComponents: 3, data: new Float32Array(position) },
    normal: { numComponents: 3, data: new Float32Array(normal) },
    colour: { numComponents: 4, data: new Uint8Array(paint), normalize: true }
  });
}
function edges(piece) {
  var rgb = colour(bay.edge), paint = [];
  for (var i = 0; i < piece.edges.length / 3; i++) { paint.push(rgb[0], rgb[1], rgb[2], 0); }
  return twgl.createBufferInfoFromArrays(gl, {
    position: { numComponents: 3, data: new Float32Array(piece.edges.map(function (v) { return v / 1e5; })) },
    normal: { numComponents: 3, data: new Float32Array(piece.edges.length) },
    colour: { numComponents: 4, data: new Uint8Array(paint), normalize: true }
  });
}
var drawn = bay.pieces.map(function (piece) {
  return {
    group: piece.group, door: piece.door, faces: faces(piece),
    edges: piece.edges.length ? edges(piece) : null
  };
});

// Where a group is at a travel: straight between the travels that are given.
function pose(group, travel) {
  var keys = bay.groups[group], at = bay.travels, i = 1;
  while (i < at.length - 1 && at[i] < travel) { i++; }
  if (at.length < 2) { return keys[0]; }
  var share = Math.min(Math.max((travel - at[i - 1]) / (at[i] - at[i - 1]), 0), 1);
  var p = keys[i - 1], q = keys[i];
  var out = p.map(function (v, k) { return v + (q[k] - v) * share; });
  var size = Math.hypot(out[3], out[4], out[5], out[6]);
  for (var k = 3; k < 7; k++) { out[k] /= size; }
  return out;
}
function matrix(p) {
  var x = p[3], y = p[4], z = p[5], w = p[6];
  return new Float32Array([
    1 - 2 * (y * y + z * z), 2 * (x * y + z * w), 2 * (x * z - y * w), 0,
    2 * (x * y - z * w), 1 - 2 * (x * x + z * z), 2 * (y * z + x * w), 0,
    2 * (x * z + y * w), 2 * (y * z - x * w), 1 - 2 * (x * x + y * y), 0,
    p[0], p[1], p[2], 1]);
}

var low = bay.room[0], high = bay.room[1];
var size = Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
var middle = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
// About: counter-clockwise from the door's own direction, and up; radians.
var EYES = [["Corner", 0.62, 0.42], ["Side", Math.PI / 2, 0.06], ["Door", 0, 0.1], ["Above", 0, 1.5]];
var around = EYES[0][1], up = EYES[0][2], far = 1, travel = 0, door = bay.door, spot = null, asked = false;

function dot(a, b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }
function eye() {
  var wide = canvas.clientWidth / Math.max(canvas.clientHeight, 1), fov = 0.6;
  var flat = Math.cos(up);
  var way = [Math.sin(around) * flat, -Math.cos(around) * flat, Math.sin(up)];
  // As near as shows every corner of the room.
  var side = [Math.cos(around), Math.sin(around), 0];
  var top = [-Math.sin(around) * Math.sin(up), Math.cos(around) * Math.sin(up), flat];
  // The nearest one under the ceiling is not shown: the walls there are left out.
  var corners = [0, 1, 2, 3, 4, 5, 6, 7].map(function (one) {
    return [0, 1, 2].map(function (k) { return one >> k & 1 ? high[k] : low[k]; });
  });
  if (up > 0.25 && up < 1.3) {
    corners.sort(function (a, b) { return dot(b, way) - dot(a, way); });
    corners.splice(0, 1);
  }
  var tall = Math.tan(fov / 2) * 0.95, to = middle, reach = 0;
  for (var round = 0; round < 6; round++) {
    reach = 0;
    var least = [Infinity, Infinity], most = [-Infinity, -Infinity];
    var about = corners.map(function (corner) { return corner.map(function (v, k) { return v - to[k]; }); });
    about.forEach(function (at) {
      reach = Math.max(reach, dot(at, way) + Math.max(Math.abs(dot(at, side)) / wide, Math.abs(dot(at, top))) / tall);
    });
    if (round === 5) { break; }
    about.forEach(function (at) {
      [side, top].forEach(function (axis, k) {
        var seen = dot(at, axis) / (reach - dot(at, way));
        least[k] = Math.min(least[k], seen);
        most[k] = Math.max(most[k], seen);
      });
    });
    to = to.map(function (v, k) {
      return v + (side[k] * (least[0] + most[0]) + top[k] * (least[1] + most[1])) * 0.5 * reach;
    });
  }
  reach *= far;
  var from = to.map(function (v, k) { return v + way[k] * reach; });
  var look = m4.inverse(m4.lookAt(from, to, Math.abs(up) > 1.4 ? [0, 1, 0] : [0, 0, 1]));
  return { matrix: m4.multiply(m4.perspective(fov, wide, 0.2, reach + size * 2), look), toward: way };
}

function draw() {
  asked = false;
  twgl.resizeCanvasToDisplaySize(canvas, Math.min(window.devicePixelRatio || 1, 2));
  gl.viewport(0, 0, canvas.width, canvas.height);
  var behind = colour(bay.behind);
  gl.clearColor(behind[0] / 255, behind[1] / 255, behind[2] / 255, 1);
  gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
  gl.enable(gl.DEPTH_TEST);
  gl.enable(gl.CULL_FACE);
  gl.enable(gl.POLYGON_OFFSET_FILL);
  gl.polygonOffset(1, 1);
  gl.useProgram(programs.program);
  var from = eye(), still = m4.identity();
  drawn.forEach(function (piece) {
    if (piece.door !== null && piece.door !== door) { return; }
    var place = piece.group === null ? still : matrix(pose(piece.group, travel));
    twgl.setUniforms(programs, { eye: from.matrix, place: place, toward: from.toward });
    twgl.setBuffersAndAttributes(gl, programs, piece.faces);
    twgl.drawBufferInfo(gl, piece.faces);
    if (piece.edges) {
      twgl.setBuffersAndAttributes(gl, programs, piece.edges);
      twgl.drawBufferInfo(gl, piece.edges, gl.LINES);
    }
  });
  canvas.dataset.drawn = String(travel);
}
function ask() {
  if (!asked) { asked = true; requestAnimationFrame(draw); }
}

function length(metres) {
  if (bay.units === "mm") { return Math.floor(metres * 1000 + 1e-6) + " mm"; }
  var sixteenths = Math.floor(metres / 0.0254 * 16 + 1e-6), feet = Math.floor(sixteenths / 192);
  var inches = Math.floor(sixteenths / 16) - 12 * feet, top = sixteenths % 16, bottom = 16;
  while (top && top % 2 === 0) { top /= 2; bottom /= 2; }
  return (feet ? feet + " ft " : "") + inches + (top ? " " + top + "/" + bottom : "") + " in";
}

// What is said holds up to the end of a stretch; at a lock it is the lock's own.
function spotAt() {
  var spots = bay.doors[door].spots, i;
  for (i = 0; i < spots.length; i++) {
    if (spots[i].from === spots[i].to && Math.abs(travel - spots[i].from) < 1e-9) { return spots[i]; }
  }
  for (i = 0; i < spots.length; i++) {
    if (spots[i].from < spots[i].to && travel >= spots[i].from && (travel < spots[i].to || travel === bay.top)
      && travel <= spots[i].to) { return spots[i]; }
  }
  return null;
}
function tell() {
  spot = spotAt();
  $("word").textContent = spot ? spot.word : "not decided";
  $("says").textContent = spot ? spot.says : "";
  $("sign").style.background = spot ? spot.colour : "";
  $("state").style.borderColor = spot ? spot.colour : "";
  $("height").textContent = travel === 0 ? "\u00b7 carriage down" : "\u00b7 carriage up " + length(travel);
  canvas.dataset.travel = String(travel);
  canvas.dataset.groups = JSON.stringify(bay.groups.map(function (_, group) { return pose(group, travel); }));
  Array.prototype.forEach.call($("locks").children, function (button, lock) {
    button.setAttribute("aria-pressed", String(Number(button.value) === travel));
    var of = lock && bay.doors[door].spots.filter(function (one) { return one.lock === lock; })[0];
    if (of) { button.style.borderBottomColor = of.colour; button.title = "Lock " + lock + ": " + of.word; }
  });
  Array.prototype.forEach.call($("doors").children, function (button, number) {
    button.setAttribute("aria-pressed", String(number === door));
  });
}
// Near enough to a lock, the carriage is taken to stand on it.
var SNAP = 0.008;
function go(metres, exactly) {
  travel = metres;
  if (!exactly) {
    [0].concat(bay.locks).forEach(function (lock) {
      if (Math.abs(metres - lock) <= SNAP) { travel = lock; }
    });
  }
  tell();
  ask();
}

function button(into, text, name, value, act) {
  var made = document.createElement("button");
  made.type = "button";
  made.textContent = text;
  if (name) { made.setAttribute("aria-label", name); }
  made.value = String(value);
  made.addEventListener("click", act);
  $(into).appendChild(made);
  return made;
}

// Up to the end of the travel: past a lock the carriage climbs to set the vehicle down on it.
var slider = $("travel"), top = bay.top;
slider.max = String(Math.ceil(top * 1000));
slider.addEventListener("input", function () { go(Math.min(Number(slider.value) / 1000, top), false); });
function press(metres) {
  slider.value = String(Math.round(metres * 1000));
  go(metres, true);
}
button("locks", "Floor", "", 0, function () { press(0); });
bay.locks.forEach(function (metres, index) {
  var made = button("locks", String(index + 1), "Lock " + (index + 1), metres, function () { press(metres); });
  if (index + 1 === bay.safe) { made.className = "safe"; }
});
if (bay.doors.length > 1) {
  bay.doors.forEach(function (one, number) {
    button("doors", "Door " + one.name, "", number, function () { door = number; tell(); ask(); });
  });
}
EYES.forEach(function (one) {
  button("eyes", one[0], "From: " + one[0].toLowerCase(), "", function () { around = one[1]; up = one[2]; ask(); });
});
function nearer(times) { far = Math.min(Math.max(far * times, 0.25), 2); ask(); }
var pair = document.createElement("span");
pair.className = "pair";
pair.appendChild(button("eyes", "+", "Nearer", "", function () { nearer(0.85); }));
pair.appendChild(button("eyes", "\u2212", "Farther", "", function () { nearer(1 / 0.85); }));
$("eyes").appendChild(pair);

function turn(right, higher) {
  around += right;
  up = Math.min(Math.max(up + higher, -0.2), 1.5);
  ask();
}
canvas.addEventListener("pointerdown", function (event) { canvas.setPointerCapture(event.pointerId); });
canvas.addEventListener("pointermove", function (event) {
  if (event.buttons & 1) { turn(-event.movementX * 0.008, event.movementY * 0.006); }
});
canvas.addEventListener("keydown", function (event) {
  var keys = {
    ArrowLeft: [-0.1, 0], ArrowRight: [0.1, 0], ArrowUp: [0, 0.08], ArrowDown: [0, -0.08]
  };
  if (keys[event.key]) { turn(keys[event.key][0], keys[event.key][1]); event.preventDefault(); }
  if (event.key === "+" || event.key === "=") { nearer(0.85); }
  if (event.key === "-") { nearer(1 / 0.85); }
});
window.addEventListener("resize", ask);
press(bay.safe ? bay.locks[bay.safe - 1] : 0);
}());
