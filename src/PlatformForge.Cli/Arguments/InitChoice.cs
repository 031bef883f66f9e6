using System.Globalization;
using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Reading;
using PlatformForge.Projects.Schemas;
using PlatformForge.Units;

namespace PlatformForge.Cli.Arguments;

/// <summary>What a short project file is made with: vehicles, bed and track, as options say them.</summary>
internal sealed class InitChoice
{
    private const double LeastRadius = 20, LeastSide = 20, MostSide = 5000;

    private readonly CommandOption vehicles, bed, track;

    private InitChoice(CommandLineApplication command)
    {
        vehicles = command.Option("--vehicle <name>", "A vehicle that runs there, as 'platformforge presets vehicles' lists it. Repeatable.",
            CommandOptionType.MultipleValue);
        bed = command.Option("--bed <size>", "Print bed in mm, such as 220x220, or a name as 'platformforge presets printers' lists it.",
            CommandOptionType.SingleValue);
        track = command.Option("--track <curve>",
            "straight, or the radius of the curve in mm and its hand, such as \"610 left\"; up to three in a row: \"610 left, 900 right\".",
            CommandOptionType.SingleValue);
    }

    public static InitChoice Add(CommandLineApplication command) => new(command);

    /// <summary>Whether one of them is stated.</summary>
    public bool IsAny => vehicles.HasValue() || bed.HasValue() || track.HasValue();

    /// <summary>The choice, or the faults in what was stated.</summary>
    public Outcome<ShortFileChoice> Read(Preset scale)
    {
        var faults = new List<Finding>();
        var chosen = vehicles.Values.Select(v => Vehicle(v!, faults)).OfType<Preset>().DistinctBy(p => p.Name).ToArray();
        if (vehicles.Values.Count > ShortFile.MostVehicles)
        {
            faults.Add(Fault("PF1017", "--vehicle", $"{vehicles.Values.Count} vehicles make the file long.",
                $"Name up to {ShortFile.MostVehicles}: the longest and the widest decide; add others to the file."));
        }

        var size = Bed(faults);
        var pieces = Track(scale, faults);
        return faults.Count > 0 ? Outcome.Fault<ShortFileChoice>(faults) : Outcome.Of(new ShortFileChoice(scale, chosen, size, pieces), []);
    }

    private static Preset? Vehicle(string name, List<Finding> faults)
    {
        if (PresetShelf.Find(PresetKind.Vehicles, name) is { } preset)
        {
            return preset;
        }

        bool isFile = name.EndsWith(".toml", StringComparison.OrdinalIgnoreCase);
        string near = NearestName.Of(name.Length > 40 ? name[..40] : name, PresetShelf.Of(PresetKind.Vehicles).Select(p => p.Name)) is { } meant
            ? $"Did you mean {meant}? " : "";
        faults.Add(Fault("PF1011", "--vehicle", $"There is no vehicle \"{Short(name)}\".", isFile
            ? $"A form for a vehicle of your own: platformforge init --form {Short(name)}" : near + "See: platformforge presets vehicles"));
        return null;
    }

    private (double Width, double Depth)? Bed(List<Finding> faults)
    {
        if (bed.Value() is not { } text)
        {
            return null;
        }

        string said = PresetShelf.Find(PresetKind.Printers, text) is { } preset ? preset.Name.Replace("bed-", "", StringComparison.Ordinal) : text;
        double[] sides = [.. said.Split('x', 'X', '×').Select(Number)];
        if (sides.Length is 1 or 2 && sides.All(s => s is >= LeastSide and <= MostSide))
        {
            return (sides[0], sides[^1]);
        }

        faults.Add(Fault("PF1011", "--bed", $"\"{Short(text)}\" is no print bed.",
            "Give its width and depth in mm, such as 220x220, or a name. See: platformforge presets printers"));
        return null;
    }

    private TrackPiece[] Track(Preset scale, List<Finding> faults)
    {
        if (track.Value() is not { } text)
        {
            return [];
        }

        var pieces = text.Split(',', StringSplitOptions.TrimEntries).Select(Piece).ToArray();
        if (pieces.Length <= ShortFile.MostPieces && Array.TrueForAll(pieces, p => p is not null))
        {
            return [.. pieces.Select(p => p!.Value)];
        }

        faults.Add(Fault("PF1011", "--track", $"\"{Short(text)}\" is no track.",
            $"Give straight, or a radius of {LeastRadius:0} mm or more with left or right, such as \"{ShortFile.Example(scale)}\", and up "
                + $"to {ShortFile.MostPieces} of them in a row with commas between. A track that was measured is stated in the file: docs/surveys.md."));
        return [];
    }

    private static TrackPiece? Piece(string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        bool Is(int word, string meant) => string.Equals(words[word], meant, StringComparison.OrdinalIgnoreCase);
        return words.Length == 1 && Is(0, "straight") ? TrackPiece.Straight
            : words.Length is 1 or 2 && Number(words[0]) >= LeastRadius && (words.Length == 1 || Is(1, "left") || Is(1, "right"))
                ? new TrackPiece(Number(words[0]), words.Length == 1 || Is(1, "left"))
            : null;
    }

    private static double Number(string text) => double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value) ? value
        : double.NaN;

    private static string Short(string text) => text.Length > 40 ? text[..40] + "…" : text;

    private static Finding Fault(string code, string option, string message, string remedy) => Finding.Error(code, "", message, remedy) with { File = option };
}
