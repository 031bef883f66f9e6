using System.Globalization;
using System.Text;
using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Exports.Dxf;

/// <summary>A layer: what its lines are for, and the number of the colour that most programs show it in (1 red, 3 green, 5 blue, 7 black or white).</summary>
public sealed record DxfLayer(string Name, int Colour);

/// <summary>Something on a layer.</summary>
public abstract record DxfEntity(string Layer);

/// <summary>Straight lines from point to point, mm; closed ones end where they begin.</summary>
public sealed record DxfLine(string Layer, IReadOnlyList<Point2> Points, bool Closed) : DxfEntity(Layer);

/// <summary>A circle, mm.</summary>
public sealed record DxfCircle(string Layer, Point2 Middle, double Radius) : DxfEntity(Layer);

/// <summary>A line of words: its base line begins at a point; mm.</summary>
public sealed record DxfText(string Layer, Point2 At, double Height, string Text) : DxfEntity(Layer);

/// <summary>
/// Writes drawing exchange files of release 12 in ASCII, which every program for cutters reads: one unit is one mm, and the file says so in a comment, since
/// that
/// release has no place for a unit. Numbers have up to six digits after the point, lines end in line feeds, words are in plain letters.
/// </summary>
public static class DxfWriter
{
    /// <summary>The file.</summary>
    /// <param name="title">What is drawn; a comment at its head.</param>
    /// <param name="layers">All layers that entities name.</param>
    /// <param name="entities">What is drawn, in order.</param>
    public static byte[] ToBytes(string title, IReadOnlyList<DxfLayer> layers, IEnumerable<DxfEntity> entities)
    {
        ArgumentNullException.ThrowIfNull(layers);
        ArgumentNullException.ThrowIfNull(entities);
        var text = new StringBuilder();
        Pair(text, 999, Plain(title));
        Pair(text, 999, "1 unit = 1 mm");
        Section(text, "HEADER");
        Pair(text, 9, "$ACADVER");
        Pair(text, 1, "AC1009");
        Pair(text, 0, "ENDSEC");
        Layers(text, layers);
        Section(text, "ENTITIES");
        foreach (var entity in entities)
        {
            Entity(text, entity);
        }

        Pair(text, 0, "ENDSEC");
        Pair(text, 0, "EOF");
        return Encoding.ASCII.GetBytes(text.ToString());
    }

    private static void Layers(StringBuilder text, IReadOnlyList<DxfLayer> layers)
    {
        Section(text, "TABLES");
        Pair(text, 0, "TABLE");
        Pair(text, 2, "LAYER");
        Pair(text, 70, Whole(layers.Count));
        foreach (var layer in layers)
        {
            Pair(text, 0, "LAYER");
            Pair(text, 2, layer.Name);
            Pair(text, 70, "0");
            Pair(text, 62, Whole(layer.Colour));
            Pair(text, 6, "CONTINUOUS");
        }

        Pair(text, 0, "ENDTAB");
        Pair(text, 0, "ENDSEC");
    }

    private static void Entity(StringBuilder text, DxfEntity entity)
    {
        switch (entity)
        {
            case DxfLine line:
                Pair(text, 0, "POLYLINE");
                Pair(text, 8, line.Layer);
                Pair(text, 66, "1");
                Place(text, default);
                Pair(text, 70, line.Closed ? "1" : "0");
                foreach (var p in line.Points)
                {
                    Pair(text, 0, "VERTEX");
                    Pair(text, 8, line.Layer);
                    Place(text, p);
                }

                Pair(text, 0, "SEQEND");
                Pair(text, 8, line.Layer);
                break;
            case DxfCircle circle:
                Pair(text, 0, "CIRCLE");
                Pair(text, 8, circle.Layer);
                Place(text, circle.Middle);
                Pair(text, 40, Number(circle.Radius));
                break;
            case DxfText words:
                Pair(text, 0, "TEXT");
                Pair(text, 8, words.Layer);
                Place(text, words.At);
                Pair(text, 40, Number(words.Height));
                Pair(text, 1, Plain(words.Text));
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(entity), entity.GetType().Name);
        }
    }

    private static void Section(StringBuilder text, string name)
    {
        Pair(text, 0, "SECTION");
        Pair(text, 2, name);
    }

    private static void Place(StringBuilder text, Point2 at)
    {
        Pair(text, 10, Number(at.X));
        Pair(text, 20, Number(at.Y));
        Pair(text, 30, "0.0");
    }

    private static void Pair(StringBuilder text, int code, string value) => text.Append(Whole(code).PadLeft(3)).Append('\n').Append(value).Append('\n');

    private static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Number(double value) => (Math.Round(value, 6) + 0.0).ToString("0.0#####", CultureInfo.InvariantCulture);

    // The release knows no letters beyond ASCII, and a line feed would end the value.
    private static string Plain(string text) => string.Concat(text.EnumerateRunes().Select(r => r.Value is >= ' ' and <= '~' ? r.ToString()
        : PlainLetters.Of(r) ?? "?"))
        .Replace('\r', ' ').Replace('\n', ' ');
}
