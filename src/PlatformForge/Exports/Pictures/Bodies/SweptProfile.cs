using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Exports.Pictures.Bodies;

/// <summary>Closed meshes drawn along a track from a cross-section, for what a picture shows beside the platform.</summary>
internal static class SweptProfile
{
    /// <summary>
    /// Draws a convex profile along a centreline.
    /// </summary>
    /// <param name="line">The line.</param>
    /// <param name="stations">Chainages, rising, at least two.</param>
    /// <param name="profile">Offsets (left positive) as X and heights as Y, mm, counter-clockwise.</param>
    public static Mesh Along(Centreline line, IReadOnlyList<double> stations, IReadOnlyList<Point2> profile)
    {
        int n = profile.Count, rows = stations.Count;
        var vertices = new Point3[n * rows];
        for (int row = 0; row < rows; row++)
        {
            var frame = line.At(stations[row]);
            for (int i = 0; i < n; i++)
            {
                var p = frame.At(profile[i].X);
                vertices[(row * n) + i] = new(p.X, p.Y, profile[i].Y);
            }
        }

        var triangles = new List<int>();
        for (int row = 0; row + 1 < rows; row++)
        {
            for (int i = 0; i < n; i++)
            {
                int a = (row * n) + i, b = (row * n) + ((i + 1) % n);
                triangles.AddRange([a, b, b + n, a, b + n, a + n]);
            }
        }

        int last = (rows - 1) * n;
        for (int i = 1; i + 1 < n; i++)
        {
            triangles.AddRange([0, i + 1, i, last, last + i, last + i + 1]);
        }

        return new(vertices, [.. triangles], []);
    }

    /// <summary>An upright box about a frame: along it, across it by offsets, between two heights, mm.</summary>
    public static Mesh Box(TrackFrame frame, double halfAlong, double fromOffset, double toOffset, double low, double high)
    {
        var half = frame.Tangent * halfAlong;
        Point2[] ring = [frame.At(fromOffset) - half, frame.At(fromOffset) + half, frame.At(toOffset) + half, frame.At(toOffset) - half];
        return new(
            [.. ring.Select(p => new Point3(p.X, p.Y, low)), .. ring.Select(p => new Point3(p.X, p.Y, high))],
            [0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7],
            []);
    }

    /// <summary>Several closed meshes as one.</summary>
    public static Mesh Joined(IReadOnlyList<Mesh> meshes)
    {
        var vertices = new List<Point3>();
        var triangles = new List<int>();
        foreach (var mesh in meshes)
        {
            int first = vertices.Count;
            vertices.AddRange(mesh.Vertices);
            triangles.AddRange(mesh.Triangles.Select(i => i + first));
        }

        return new([.. vertices], [.. triangles], []);
    }
}
