"""Triangle surfaces in millimetres: a library that knows nothing of what they are surfaces of.

Needs numpy and scipy only. Where to find what:

- the value and its derived arrays: `mesh`; its own frame: `frame`
- files: `loading`, which welds (`welding`) and turns (`winding`) and keeps the way back to the file
- what is wrong with a surface: `report`
- finer and coarser: `refining` keeps the surface exactly, `thinning` makes a copy to compute on,
  `clustering` a lighter list of triangles to draw
- smoothing and spreading: `diffusion`, on factorisations by `factoring` and `dissection`, or
  iterated by `screened` and `coarsening`; pieces of their matrices by `sparse_rows`
- bending: `curvature` (mean, Gaussian, at one scale or several), `principal`, `crease_field`
- ways: `geodesic` (distances, paths), `crease_path` (lines along creases)
- what lies near a place: `point_blocks`
- areas: `brush`, `crease_fill`, `region` (grow, shrink, smooth), `mincut`, `mirroring`
- rays and sight: `picking`, `openness`
- bodies: `thickness` of walls, `section`, `cut_lines`, `neck` (smallest
  sections), `cutting` and `capping`
- how much of a surface lies below a value: `below_level`
- flat maps of a piece of surface: `flattening`

Arrays in results are read-only. Wrong arguments raise `ValueError`; files that cannot be read, and
surfaces too large to work on, raise `stainmap.errors.MeshFileError` with a sentence for people.
"""
