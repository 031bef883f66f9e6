using PlatformForge.Exports.Pictures;
using PlatformForge.Exports.Pictures.Light;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.LineArt;

/// <summary>How near to the eye the nearest surface lies, over a grid of dots: what hides what.</summary>
internal sealed class DepthField(int width, int height) : IDisposable
{
    // Dots lie in the middle of their squares. Their depths, some 26 MB of a sheet, are borrowed.
    private readonly Raster nearest = new(width, height, shows: false, LentFields.Own.Rent(width * height));

    /// <summary>Gives back what was borrowed.</summary>
    public void Dispose() => LentFields.Own.GiveBack(nearest.Depth);

    /// <summary>Lays a body into the field, seen by a parallel view whose unit on the sheet is a dot.</summary>
    public void Add(Mesh mesh, View view)
    {
        var corners = new Point3[mesh.Vertices.Length];
        view.Project(mesh.Vertices, corners);
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            nearest.Fill(corners[mesh.Triangles[i]], corners[mesh.Triangles[i + 1]], corners[mesh.Triangles[i + 2]], 0);
        }
    }

    /// <summary>Depth of the farthest of the nearest surfaces at a dot and its eight neighbours: a line on the rim of a surface is not hidden by it. Beyond
    /// the grid nothing is.</summary>
    public float Behind(double x, double y)
    {
        int column = (int)Math.Floor(x), row = (int)Math.Floor(y);
        if (column < -1 || row < -1 || column > width || row > height)
        {
            return float.NegativeInfinity;
        }

        float least = float.PositiveInfinity;
        if (column > 0 && row > 0 && column < width - 1 && row < height - 1)
        {
            for (int first = ((row - 1) * width) + column - 1, r = 0; r < 3; r++, first += width)
            {
                var three = nearest.Depth.AsSpan(first, 3);
                float lower = three[0] < three[1] ? three[0] : three[1];
                lower = three[2] < lower ? three[2] : lower;
                least = lower < least ? lower : least;
            }

            return least;
        }

        for (int r = Math.Max(0, row - 1); r <= Math.Min(height - 1, row + 1); r++)
        {
            for (int c = Math.Max(0, column - 1); c <= Math.Min(width - 1, column + 1); c++)
            {
                least = Math.Min(least, nearest.Depth[(r * width) + c]);
            }
        }

        return least;
    }
}
