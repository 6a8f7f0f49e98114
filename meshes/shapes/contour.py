"""From an implicit solid to a closed, even triangle mesh."""

from __future__ import annotations

import numpy as np
import trimesh
from vtkmodules.util.numpy_support import numpy_to_vtk, vtk_to_numpy
from vtkmodules.vtkCommonDataModel import vtkImageData
from vtkmodules.vtkFiltersCore import vtkFlyingEdges3D

from meshes.shapes.decimation import decimate
from meshes.shapes.neighbours import evened, least_of_piece
from meshes.shapes.solid import Solid, evaluate_grid


def contour_grid(
    values: np.ndarray, lower: np.ndarray, spacing: float, level: float = 0.0
) -> tuple[np.ndarray, np.ndarray]:
    """Contour a grid of signed distances.

    Parameters
    ----------
    values : (nz, ny, nx) float32
        Negative inside.
    lower : (3,) float
        Position of values[0, 0, 0], mm.
    spacing : float
    level : float

    Returns
    -------
    vertices : (n, 3) float64
    faces : (m, 3) int64
        Wound so that normals point outward; closed unless the surface meets
        the border of the grid.
    """
    image = vtkImageData()
    image.SetDimensions(values.shape[2], values.shape[1], values.shape[0])
    image.SetSpacing(spacing, spacing, spacing)
    image.SetOrigin(*map(float, lower))
    scalars = numpy_to_vtk(np.ascontiguousarray(values, np.float32).ravel(), deep=False)
    image.GetPointData().SetScalars(scalars)
    edges = vtkFlyingEdges3D()
    edges.SetInputData(image)
    edges.SetValue(0, level)
    edges.ComputeNormalsOff()
    edges.ComputeGradientsOff()
    edges.ComputeScalarsOff()
    edges.Update()
    surface = edges.GetOutput()
    if surface.GetNumberOfPolys() == 0:
        return np.zeros((0, 3)), np.zeros((0, 3), np.int64)
    vertices = vtk_to_numpy(surface.GetPoints().GetData()).astype(np.float64)
    faces = vtk_to_numpy(surface.GetPolys().GetConnectivityArray()).reshape(-1, 3).astype(np.int64)
    a, b, c = (vertices[faces[:, i]] for i in range(3))
    if np.einsum("ij,ij->i", a, np.cross(b, c)).sum() < 0:
        faces = faces[:, ::-1]
    return vertices, faces


def contour(
    solid: Solid,
    spacing: float,
    triangles: int,
    *,
    bounds: np.ndarray | None = None,
    smoothing: int = 3,
    keep_pieces: bool = False,
) -> trimesh.Trimesh:
    """Contour a solid and bring it to about the wanted number of triangles.

    Parameters
    ----------
    solid : Solid
    spacing : float
        Grid step, mm; features thinner than about two steps are lost.
    triangles : int
        Wanted number of triangles.
    bounds : (2, 3) float or None
        Box to search; the solid's own by default.
    smoothing : int
        Rounds of tangential relaxation before decimation.
    keep_pieces : bool
        False keeps only the largest connected piece.

    Returns
    -------
    trimesh.Trimesh
        Closed, outward.

    Raises
    ------
    ValueError
        Nothing of the solid lies in the box.
    """
    box = solid.bounds() if bounds is None else np.asarray(bounds, float)
    count = np.maximum(np.ceil((box[1] - box[0]) / spacing).astype(int) + 1, 4)
    values = evaluate_grid(solid.program, box[0], spacing, *map(int, count), 6)
    # The border counts as outside, so that the surface closes there.
    for axis in range(3):
        edge = [slice(None)] * 3
        for index in (0, -1):
            edge[axis] = index
            values[tuple(edge)] = np.maximum(values[tuple(edge)], 0.25 * spacing)
    vertices, faces = contour_grid(values, box[0], spacing)
    if len(faces) == 0:
        raise ValueError("contour: the solid is empty within its bounds")
    if not keep_pieces:
        vertices, faces = largest_piece(vertices, faces)
    vertices = relax(vertices, faces, smoothing)
    vertices = solid.project(vertices, steps=2)
    vertices, faces = simplify(vertices, faces, triangles)
    return trimesh.Trimesh(vertices, faces, process=False)


def relax(vertices: np.ndarray, faces: np.ndarray, rounds: int, weight: float = 0.5) -> np.ndarray:
    """Taubin smoothing: evens triangles and removes grid steps without shrinking."""
    if rounds <= 0:
        return vertices
    return evened(vertices, faces, rounds, weight, weight + 0.03)


def largest_piece(vertices: np.ndarray, faces: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Keep the connected piece with most faces."""
    piece = pieces(faces)
    share = np.bincount(piece)
    if np.count_nonzero(share) == 1:
        return vertices, faces
    used, renumbered = np.unique(faces[piece == share.argmax()], return_inverse=True)
    return vertices[used], renumbered.reshape(-1, 3)


def simplify(
    vertices: np.ndarray, faces: np.ndarray, triangles: int
) -> tuple[np.ndarray, np.ndarray]:
    """Decimate to about `triangles`, keeping the mesh closed.

    Tries the wanted number first and retreats to finer meshes when the result
    is not a closed two-manifold.
    """
    target, aggression = max(int(triangles), 40), 5
    whole = len(np.unique(pieces(faces)))
    while len(faces) > target * 1.05:
        wanted = int((1 - (1.0 - target / len(faces))) * len(faces))
        points, new_faces = decimate(vertices.astype(np.float32), faces, wanted, aggression)
        # Low aggression gives better triangles but may stop far above the wanted number.
        if len(new_faces) > target * 1.1 and aggression < 7:
            aggression += 2
            continue
        points, new_faces = without_flaps(points, new_faces)
        if not is_two_manifold(new_faces):
            points, new_faces = without_crumbs(
                *unpinched(points, new_faces, waists=target > _FINER * triangles)
            )
        # What hung together by a pinched place must not fall apart.
        if is_two_manifold(new_faces) and len(np.unique(pieces(new_faces))) <= whole:
            return points, new_faces
        if aggression < 8:
            aggression = 8
        else:
            target, aggression = int(target * 1.2), 5
    return vertices, faces


def pieces(faces: np.ndarray) -> np.ndarray:
    """Return (m,) the least vertex of the connected piece that each of (m, 3) faces is of."""
    if len(faces) == 0:
        return np.zeros(0, np.int64)
    return least_of_piece(int(faces.max()) + 1, faces)[faces[:, 0]]


_CRUMB = 0.001
"""Share of a mesh's volume below which a piece that came off is dropped."""


def without_crumbs(vertices: np.ndarray, faces: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Drop the connected pieces that enclose next to nothing of a mesh's volume."""
    _, piece = np.unique(pieces(faces), return_inverse=True)
    a, b, c = vertices[faces].transpose(1, 0, 2)
    volume = np.abs(np.bincount(piece, np.einsum("ij,ij->i", a, np.cross(b, c))))
    keep = (volume >= _CRUMB * volume.sum())[piece]
    used, renumbered = np.unique(faces[keep], return_inverse=True)
    return vertices[used], renumbered.reshape(-1, 3)


def without_flaps(vertices: np.ndarray, faces: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Drop pairs of faces on the same three vertices, and the vertices only they used.

    Decimation leaves them where a thin piece collapsed. They enclose nothing,
    pass as closed, and turn the sign of distances near them.
    """
    a, b, c = np.sort(faces, axis=1).T
    key = (a * len(vertices) + b) * len(vertices) + c
    in_order = np.sort(key)
    if not np.any(in_order[1:] == in_order[:-1]):
        return vertices, faces
    _, inverse, count = np.unique(key, return_inverse=True, return_counts=True)
    keep = count[inverse] == 1
    used, renumbered = np.unique(faces[keep], return_inverse=True)
    return vertices[used], renumbered.reshape(-1, 3)


_FINER = 1.3
"""Factor on the wanted triangles up to which a mesh without hair-thin waists is looked for."""
_PULL = 0.02
"""Share of the way to its neighbours by which a corner taken apart moves."""


def unpinched(
    vertices: np.ndarray, faces: np.ndarray, *, waists: bool = False
) -> tuple[np.ndarray, np.ndarray]:
    """Take a mesh apart where it touches itself along an edge or at a corner.

    Decimation lets thin places meet: an edge is then used by four faces. Those
    that have the solid between them are joined, and each side gets corners of its
    own, drawn a hair towards its own neighbours.

    Parameters
    ----------
    vertices : (n, 3) float
    faces : (m, 3) int
        Outward.
    waists : bool
        True also keeps waists that shrank to one edge, a hair thin.

    Returns
    -------
    vertices, faces
        As given where an edge is not used as often in one direction as in the other.
    """
    from scipy.sparse import coo_matrix
    from scipy.sparse.csgraph import connected_components

    start, stop = faces.reshape(-1), np.roll(faces, -1, axis=1).reshape(-1)
    low, high = np.minimum(start, stop), np.maximum(start, stop)
    forward = start < stop
    order = np.lexsort((forward, high, low))
    key = low[order] * (len(vertices) + 1) + high[order]
    first = np.flatnonzero(np.concatenate([[True], key[1:] != key[:-1]]))
    size = np.diff(np.append(first, len(key)))
    if np.any(size % 2) or not np.array_equal(
        np.add.reduceat(forward[order].astype(int), first), size // 2
    ):
        return vertices, faces
    plain = first[size == 2]
    pairs = [np.stack([order[plain + 1], order[plain]], axis=1)]
    for begin, count in zip(first[size > 2], size[size > 2], strict=True):
        around = order[begin : begin + count]
        pairs.append(_pairs_round_edge(vertices, faces, around[count // 2 :], around[: count // 2]))
    one, two = np.concatenate(pairs).T
    after = 3 * (np.arange(3 * len(faces)) // 3) + (np.arange(3 * len(faces)) + 1) % 3
    # Along an edge the corner of one face lies on that of the other.
    a = np.concatenate([one, after[one]])
    b = np.concatenate([after[two], two])
    graph = coo_matrix((np.ones(len(a), bool), (a, b)), (3 * len(faces),) * 2)
    count, corner = connected_components(graph, directed=False)
    owner = np.zeros(count, np.int64)
    owner[corner] = start
    points = vertices[owner]
    new_faces = corner.reshape(-1, 3)
    apart = np.bincount(owner, minlength=len(vertices))[owner] > 1
    total, uses = np.zeros((count, 3)), np.zeros(count)
    for k in (1, 2):
        np.add.at(total, new_faces, points[np.roll(new_faces, -k, axis=1)])
        np.add.at(uses, new_faces, 1.0)
    mean = total / uses[:, None]
    points[apart] += _PULL * (mean - points)[apart]
    if not waists or not pairs[1:]:
        return points, new_faces
    return _own_edges(points, new_faces, np.concatenate(pairs[1:]))


def _own_edges(
    points: np.ndarray, faces: np.ndarray, pairs: np.ndarray
) -> tuple[np.ndarray, np.ndarray]:
    """Give the second pair of faces on one edge a corner of its own in the edge's middle.

    Where a waist or a bridge shrank to a single edge, both its ends hang together by other
    ways, so that they can't be taken apart.

    pairs : (k, 2) numbers 3 * face + corner of half-edges there and back.
    """
    faces = faces.copy()
    seen: set[tuple[int, int]] = set()
    touched: set[int] = set()
    new_points, new_faces = [], []
    for halves in pairs.tolist():
        (one, at), (two, back) = (divmod(half, 3) for half in halves)
        a, b, c = (int(faces[one, (at + k) % 3]) for k in range(3))
        d = int(faces[two, (back + 2) % 3])
        edge = (min(a, b), max(a, b))
        if edge not in seen or one in touched or two in touched:
            seen.add(edge)
            continue
        middle = 0.5 * (points[a] + points[b])
        new_points.append(middle + _PULL * (0.5 * (points[c] + points[d]) - middle))
        m = len(points) + len(new_points) - 1
        faces[one], faces[two] = (a, m, c), (b, m, d)
        new_faces += [(m, b, c), (m, a, d)]
        touched |= {one, two}
    if not new_points:
        return points, faces
    return np.concatenate([points, new_points]), np.concatenate([faces, new_faces])


def _pairs_round_edge(
    vertices: np.ndarray, faces: np.ndarray, there: np.ndarray, back: np.ndarray
) -> np.ndarray:
    """Pairs (k, 2) of half-edges on one edge that have the solid between their faces.

    there, back : numbers 3 * face + corner of those that lead from the lower to the higher
    vertex, and of those that lead back.
    """
    face, at = np.divmod(there[0], 3)
    origin, end = vertices[faces[face, at]], vertices[faces[face, (at + 1) % 3]]
    axis = (end - origin) / max(np.linalg.norm(end - origin), 1e-12)
    across = np.cross(axis, [1.0, 0.0, 0.0] if abs(axis[0]) < 0.8 else [0.0, 1.0, 0.0])
    across /= np.linalg.norm(across)
    third = np.cross(axis, across)

    def angle(half: int) -> float:
        face, at = divmod(int(half), 3)
        way = vertices[faces[face, (at + 2) % 3]] - origin
        return float(np.arctan2(way @ third, way @ across))

    free = {int(h): angle(h) for h in back}
    pairs = []
    for half in there:
        here = angle(half)
        nearest = min(free, key=lambda h: (here - free[h]) % (2 * np.pi))
        free.pop(nearest)
        pairs.append((int(half), nearest))
    return np.array(pairs)


def is_two_manifold(faces: np.ndarray) -> bool:
    """True when every edge is shared by exactly two faces with opposite direction."""
    if len(faces) == 0:
        return False
    edges = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]])
    n = int(faces.max()) + 1
    forward = np.sort(edges[:, 0] * n + edges[:, 1])
    backward = np.sort(edges[:, 1] * n + edges[:, 0])
    if np.any(forward[1:] == forward[:-1]):
        return False
    return bool(np.array_equal(forward, backward))
