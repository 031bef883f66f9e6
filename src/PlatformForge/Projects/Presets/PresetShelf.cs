using System.Globalization;
using System.Reflection;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects.Presets;

/// <summary>One preset of the shelf.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="Name">Name it is asked for by.</param>
/// <param name="Title">One line that says what it is.</param>
/// <param name="Source">Where its figures come from.</param>
/// <param name="OtherNames">Names that mean the same.</param>
public sealed record Preset(PresetKind Kind, string Name, string Title, string Source, IReadOnlyList<string> OtherNames)
{
    /// <summary>Names that others of the kind go by too, so that one of them alone says nothing.</summary>
    public IReadOnlyList<string> SharedNames { get; init; } = [];

    internal TreeTable Tree { get; init; } = new(default, []);

    /// <summary>Its figures that have a source of their own beside them; empty where one source stands for all.</summary>
    public IReadOnlyList<PresetFigure> Figures => field ??= PresetFigure.Of(Text);

    /// <summary>Its file.</summary>
    internal string Text { get; init; } = "";

    /// <summary>Its sources in a line: how many figures are published, common practice or from memory, or the one source of them all.</summary>
    public string SourcesInShort => Figures.Count == 0 ? Source : string.Join(", ",
        Figures.GroupBy(f => f.Standing).OrderBy(g => g.Key).Select(g => FormattableString.Invariant($"{g.Count()} {PresetFigure.Say(g.Key)}")));

    /// <summary>What a vehicle of the kind is called when it is given no name: the name among the preset's keys, or else its title.</summary>
    public string Spoken => Tree.TextOf("name") ?? Title;
}

/// <summary>
/// The presets that come with the program. Each is a TOML file with a <c>[preset]</c> table (title, source, and for scales
/// other_names) and, for the rest, the keys of the table it stands in for.
/// </summary>
public static class PresetShelf
{
    private const string Head = "preset", SampleFolder = "presets/samples/";

    private static readonly Assembly Home = typeof(PresetShelf).Assembly;

    // A kind is read when it is first asked for: most projects name no more than a scale.
    private static readonly Lazy<IReadOnlyList<Preset>> AllScales = new(() => Load(PresetKind.Scales)), AllVehicles = new(() => Load(PresetKind.Vehicles)),
        AllPrinters = new(() => Load(PresetKind.Printers));

    /// <summary>Presets of a kind, by name. Samples are asked for by <see cref="SampleNames"/>.</summary>
    public static IReadOnlyList<Preset> Of(PresetKind kind) => kind switch
    {
        PresetKind.Scales => AllScales.Value,
        PresetKind.Vehicles => AllVehicles.Value,
        PresetKind.Printers => AllPrinters.Value,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    /// <summary>The preset of a name or of one of its other names, whatever the case; null when there is none.</summary>
    public static Preset? Find(PresetKind kind, string name) =>
        Of(kind).FirstOrDefault(p => p.OtherNames.Prepend(p.Name).Contains(name, StringComparer.OrdinalIgnoreCase));

    /// <summary>
    /// The scales that a text may mean, as lists and reports print them: by name, title or other name, with or without spaces, by a ratio such as 1:148,
    /// or by a name that several share.
    /// </summary>
    public static IReadOnlyList<Preset> Scales(string text)
    {
        string asked = text.Replace(" ", "", StringComparison.Ordinal);
        bool Is(string name) => string.Equals(name.Replace(" ", "", StringComparison.Ordinal), asked, StringComparison.OrdinalIgnoreCase);
        var all = Of(PresetKind.Scales);
        Preset[] named = [.. all.Where(p => Is(p.Name) || Is(p.Title) || p.OtherNames.Any(Is))], shared = [.. all.Where(p => p.SharedNames.Any(Is))];
        return named.Length > 0 ? named : shared.Length > 0 ? shared : OfRatio(asked, all);
    }

    // Of the very ratio where there is one, else of one that is rounded to the digits given.
    private static Preset[] OfRatio(string asked, IReadOnlyList<Preset> all)
    {
        if (!(asked.StartsWith("1:", StringComparison.Ordinal) || asked.StartsWith("1/", StringComparison.Ordinal))
            || !double.TryParse(asked[2..], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double ratio))
        {
            return [];
        }

        int digits = Math.Min(10, asked.Contains('.', StringComparison.Ordinal) ? asked.Length - 1 - asked.IndexOf('.', StringComparison.Ordinal) : 0);
        double RatioOf(Preset p) => (p.Tree.Find("ratio")?.Value as TreeNumber)?.Value ?? double.NaN;
        Preset[] exact = [.. all.Where(p => RatioOf(p) == ratio)];
        return exact.Length > 0 ? exact : [.. all.Where(p => Math.Round(RatioOf(p), digits) == ratio)];
    }

    /// <summary>Sample projects.</summary>
    public static IReadOnlyList<string> SampleNames =>
        [.. Files(PresetKind.Samples).Select(NameOf)];

    /// <summary>Text of a sample project; null when there is none of that name.</summary>
    public static string? Sample(string name) =>
        Files(PresetKind.Samples).FirstOrDefault(f => string.Equals(NameOf(f), name, StringComparison.OrdinalIgnoreCase)) is { } file ? TextOf(file) : null;

    /// <summary>Files that a sample's text names, by their path beside it: the readings it was measured by.</summary>
    public static IReadOnlyList<(string Path, string Text)> FilesOf(string sample) =>
        [.. Home.GetManifestResourceNames()
            .Where(n => n.StartsWith(SampleFolder + "survey/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(n => (Path: n[SampleFolder.Length..], Resource: n))
            .Where(f => Sample(sample)?.Contains($"\"{f.Path}\"", StringComparison.Ordinal) == true)
            .Select(f => (f.Path, TextOf(f.Resource)))];

    /// <summary>A preset's keys without its head, ready to be laid under those of a project.</summary>
    internal static TreeTable Body(TreeTable tree) =>
        new(tree.Place, [.. tree.Entries.Where(e => !string.Equals(e.Name, Head, StringComparison.Ordinal))]);

    private static IReadOnlyList<Preset> Load(PresetKind kind) =>
        [.. Files(kind).Select(file =>
        {
            string text = TextOf(file);
            var read = TreeReader.Read(text, file);
            if (read.Value?.Find(Head)?.Value is not TreeTable head)
            {
                throw new BrokenInvariantException($"Projects: the preset {file} that comes with the program can't be "
                    + $"read: {(read.Findings is [var first, ..] ? first.Message : "it has no [preset] table")}");
            }

            string[] Names(string key) => (head.Find(key)?.Value as TreeList)?.Items.OfType<TreeText>().Select(t => t.Value).ToArray() ?? [];
            return new Preset(kind, NameOf(file), head.TextOf("title") ?? "", head.TextOf("source") ?? "",
                Names("other_names")) { SharedNames = Names("shared_names"), Tree = Body(read.Value), Text = text };
        })];

    private static IEnumerable<string> Files(PresetKind kind)
    {
        string folder = "presets/" + kind.ToString().ToLowerInvariant() + "/";
        return Home.GetManifestResourceNames()
            .Select(n => n.Replace('\\', '/'))
            .Where(n => n.StartsWith(folder, StringComparison.Ordinal) && n.EndsWith(".toml", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);
    }

    private static string NameOf(string file) => Path.GetFileNameWithoutExtension(file);

    private static string TextOf(string file)
    {
        string resource = Home.GetManifestResourceNames().First(n => n.Replace('\\', '/') == file);
        using var stream = Home.GetManifestResourceStream(resource)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
