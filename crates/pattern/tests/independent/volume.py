"""Volume of each object of a 3MF archive, or of a binary STL file, by the library of Python alone.

    python3 volume.py FILE

Prints one line an object: its name, the unit and the signed sum of its tetrahedra. Shares no line
with the readers of this room, so that what both read alike was written as the formats have it.
"""
import struct
import sys
import xml.etree.ElementTree as ElementTree
import zipfile

CORE = "{http://schemas.microsoft.com/3dmanufacturing/core/2015/02}"


def volume(points, facets):
    total = 0.0
    for a, b, c in facets:
        (ax, ay, az), (bx, by, bz), (cx, cy, cz) = points[a], points[b], points[c]
        total += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)
    return total / 6.0


def of_archive(path):
    with zipfile.ZipFile(path) as archive:
        assert archive.testzip() is None
        links = ElementTree.fromstring(archive.read("_rels/.rels"))
        target = [link.get("Target") for link in links if link.get("Type").endswith("/3dmodel")][0]
        model = ElementTree.fromstring(archive.read(target.lstrip("/")))
    for entry in model.findall(CORE + "metadata"):
        print("metadata", entry.get("name"), entry.text, sep="\t")
    placed = [item.get("objectid") for item in model.find(CORE + "build")]
    for thing in model.find(CORE + "resources"):
        assert thing.get("id") in placed
        mesh = thing.find(CORE + "mesh")
        points = [[float(v.get(axis)) for axis in "xyz"] for v in mesh.find(CORE + "vertices")]
        corners = [[int(t.get(v)) for v in ("v1", "v2", "v3")] for t in mesh.find(CORE + "triangles")]
        print("object", thing.get("name"), model.get("unit"), repr(volume(points, corners)), sep="\t")


def of_stl(path):
    with open(path, "rb") as file:
        file.seek(80)
        (count,) = struct.unpack("<I", file.read(4))
        records = [struct.unpack("<12fH", file.read(50)) for _ in range(count)]
        assert file.read() == b""
    points = [record[3 + 3 * i : 6 + 3 * i] for record in records for i in range(3)]
    facets = [(3 * i, 3 * i + 1, 3 * i + 2) for i in range(count)]
    print("object", "", "", repr(volume(points, facets)), sep="\t")


(of_archive if sys.argv[1].endswith(".3mf") else of_stl)(sys.argv[1])
