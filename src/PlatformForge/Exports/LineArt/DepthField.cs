using PlatformForge.Exports.Pictures;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.LineArt;

/// <summary>How near to the eye the nearest surface lies, over a grid of dots: what hides what.</summary>
internal sealed class DepthField(int width, int height)
{
    private readonly float[] nearest = Filled(width * height);

    /// <summary>Lays a body into the field, seen by a parallel view whose unit on the sheet is a dot.</summary>
    public void Add(Mesh mesh, View view)
    {
        var corners = Array.ConvertAll(mesh.Vertices, view.Project);
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Add(corners[mesh.Triangles[i]], corners[mesh.Triangles[i + 1]], corners[mesh.Triangles[i + 2]]);
        }
    }

    /// <summary>Depth of the farthest of the nearest surfaces at a dot and its eight neighbours: a line on the rim of a surface is not hidden by it.</summary>
    public float Behind(double x, double y)
    {
        int column = (int)x, row = (int)y;
        float least = float.PositiveInfinity;
        for (int r = Math.Max(0, row - 1); r <= Math.Min(height - 1, row + 1); r++)
        {
            for (int c = Math.Max(0, column - 1); c <= Math.Min(width - 1, column + 1); c++)
            {
                least = Math.Min(least, nearest[(r * width) + c]);
            }
        }

        return least;
    }

    // Dots lie in the middle of their squares; y runs down, so what faces the eye turns clockwise and has a negative area.
    private void Add(Point3 a, Point3 b, Point3 c)
    {
        double area = ((b.X - a.X) * (c.Y - a.Y)) - ((c.X - a.X) * (b.Y - a.Y));
        if (area >= 0)
        {
            return;
        }

        int left = Math.Max(0, (int)Math.Floor(Math.Min(a.X, Math.Min(b.X, c.X)))), right = Math.Min(width - 1, (int)Math.Ceiling(Math.Max(a.X, Math.Max(b.X, c.X))));
        int top = Math.Max(0, (int)Math.Floor(Math.Min(a.Y, Math.Min(b.Y, c.Y)))), bottom = Math.Min(height - 1, (int)Math.Ceiling(Math.Max(a.Y, Math.Max(b.Y, c.Y))));
        for (int row = top; row <= bottom; row++)
        {
            for (int column = left; column <= right; column++)
            {
                double x = column + 0.5, y = row + 0.5;
                double u = (((c.X - b.X) * (y - b.Y)) - ((c.Y - b.Y) * (x - b.X))) / area;
                double v = (((a.X - c.X) * (y - c.Y)) - ((a.Y - c.Y) * (x - c.X))) / area;
                if (u >= 0 && v >= 0 && u + v <= 1)
                {
                    ref float here = ref nearest[(row * width) + column];
                    here = Math.Max(here, (float)((u * a.Z) + (v * b.Z) + ((1 - u - v) * c.Z)));
                }
            }
        }
    }

    private static float[] Filled(int count)
    {
        float[] field = new float[count];
        Array.Fill(field, float.NegativeInfinity);
        return field;
    }
}
