using PlatformForge.Exports.Files;

namespace PlatformForge.Exports.Pictures;

/// <summary>
/// Pictures of one run that take turns where each holds much: a scene has some 160 bytes for every triangle while it is drawn, and the strips of a picture
/// use all cores
/// as it is. Pictures of few triangles are drawn side by side.
/// </summary>
internal sealed class PictureTurns
{
    // Triangles: some 16 MB a picture.
    private const int Many = 100_000;

    private readonly Lock turn = new();

    /// <summary>Draws a picture of a platform when its turn has come.</summary>
    public T Draw<T>(PlatformDossier platform, Func<T> draw) => InTurn([platform], draw);

    /// <summary>Does something else that holds as much of platforms as their pictures do.</summary>
    public T InTurn<T>(IEnumerable<PlatformDossier> platforms, Func<T> draw)
    {
        if (platforms.Sum(p => p.Sections.Sections.Sum(s => s.Solid.Mesh.TriangleCount)) < Many)
        {
            return draw();
        }

        lock (turn)
        {
            // What the picture before held, and what was made beside it, is let go of before as much again is asked for: the collector, which sees
            // a machine with room, would wait, and a build held twice what it uses.
            LentFields.Own.LetGo();
            GC.Collect();
            return draw();
        }
    }
}
