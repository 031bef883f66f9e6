using System.Text.Json;
using System.Text.Json.Serialization;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Manifests;

/// <summary>
/// A rigid motion as three rows of four numbers, [r | t], so that a column of x, y, z, 1 is moved by a plain matrix product. Mirrors and
/// shears are refused when read.
/// </summary>
internal sealed class RigidTransformForm : JsonConverter<RigidTransform>
{
    // A motion that went through decimal text keeps its rows at right angles to this.
    private const double Squareness = 1e-9;

    public override RigidTransform Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var rows = JsonSerializer.Deserialize<double[][]>(ref reader, options);
        if (rows is not { Length: 3 } || rows.Any(r => r is not { Length: 4 }))
        {
            throw new JsonException("A motion is three rows of four numbers.");
        }

        Point3 Row(int i) => new(rows[i][0], rows[i][1], rows[i][2]);
        var (a, b, c) = (Row(0), Row(1), Row(2));
        bool rigid = Math.Abs(a.Length - 1) + Math.Abs(b.Length - 1) + Math.Abs(c.Length - 1) < Squareness
            && (Point3.Cross(a, b) - c).Length < Squareness;
        return rigid
            ? new(a, b, c, new(rows[0][3], rows[1][3], rows[2][3]))
            : throw new JsonException("A motion must neither stretch nor mirror.");
    }

    public override void Write(Utf8JsonWriter writer, RigidTransform value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        Row(writer, value.Row0, value.Translation.X);
        Row(writer, value.Row1, value.Translation.Y);
        Row(writer, value.Row2, value.Translation.Z);
        writer.WriteEndArray();
    }

    private static void Row(Utf8JsonWriter writer, Point3 turn, double shift)
    {
        writer.WriteStartArray();
        writer.WriteNumberValue(turn.X);
        writer.WriteNumberValue(turn.Y);
        writer.WriteNumberValue(turn.Z);
        writer.WriteNumberValue(shift);
        writer.WriteEndArray();
    }
}

/// <summary>A plan point as two numbers in brackets.</summary>
internal sealed class Point2Form : JsonConverter<Point2>
{
    public override Point2 Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        JsonSerializer.Deserialize<double[]>(ref reader, options) is [var x, var y] ? new(x, y) : throw new JsonException("A point is two numbers.");

    public override void Write(Utf8JsonWriter writer, Point2 value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        writer.WriteNumberValue(value.X);
        writer.WriteNumberValue(value.Y);
        writer.WriteEndArray();
    }
}
