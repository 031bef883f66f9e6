using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Tables;

/// <summary>A column that a survey kind looks for: its name in findings and the other words people head it with.</summary>
/// <param name="Name">Name in findings.</param>
/// <param name="Words">Headers taken for it, in small letters without spaces or signs.</param>
/// <param name="Needed">Whether a file without it is of no use.</param>
internal sealed record TableColumn(string Name, string[] Words, bool Needed = true)
{
    /// <summary>Those of the words that mean it only where no other column does: a number beside a distance is only a number.</summary>
    public string[] StandIns { get; init; } = [];

    public static readonly TableColumn Distance = new("distance", ["distance", "dist", "along", "alongstring", "chainage", "at", "x"])
    {
        StandIns =
        ["at", "x"]
    };
    public static readonly TableColumn Offset = new("offset", ["offset", "offsets", "ordinate", "off", "y"]) { StandIns = ["y"] };
    public static readonly TableColumn Side = new("side", ["side", "hand"], Needed: false);
    public static readonly TableColumn X = new("x", ["x", "east", "easting", "across"]) { StandIns = ["across"] };
    public static readonly TableColumn Y = new("y", ["y", "north", "northing", "up"]) { StandIns = ["up"] };
    public static readonly TableColumn Station =
        new("station", ["station", "stations", "stn", "chainage", "distance", "dist", "no", "number", "at"]) { StandIns = ["no", "number", "at"] };
    public static readonly TableColumn Versine = new("versine", ["versine", "versines", "v", "ordinate", "midordinate", "sagitta", "reading"]);

    /// <summary>A header split into its word, in small letters without signs, and the unit it states, as in "offset (cm)" or "x_in".</summary>
    public static (string Word, string? Unit) Split(string header)
    {
        string text = header.Trim().ToLowerInvariant();
        int open = text.IndexOfAny(['(', '[']);
        if (open >= 0)
        {
            return (Letters(text[..open]), text[(open + 1)..].TrimEnd(')', ']', ' ').Trim());
        }

        int last = text.LastIndexOfAny(['_', ' ', '/', '-']);
        return last > 0 && LengthUnits.Named(text[(last + 1)..]) is not null
            ? (Letters(text[..last]), text[(last + 1)..])
            : (Letters(text), null);
    }

    private static string Letters(string text) => string.Concat(text.Where(char.IsLetter));
}
