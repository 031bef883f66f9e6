using System.Diagnostics;
using FsCheck.Xunit;
using PlatformForge.Exports.Files;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Names;

public class FileNameTests
{
    // Names of devices: "Naming Files, Paths, and Namespaces", the published rules of a widely used file system.
    private static readonly string[] Devices =
        ["con", "prn", "aux", "nul", .. Enumerable.Range(0, 10).SelectMany(n => new[] { $"com{n}", $"lpt{n}" })];

    [Fact]
    public void A_name_of_a_file_is_plain_on_every_system() => Assert.All(HostileNames.All.Concat(HostileNames.Refused), name =>
    {
        string plain = FileNames.Plain(name);
        Assert.Matches("^[a-z0-9]([a-z0-9-]{0,58}[a-z0-9])?$", plain);
        Assert.DoesNotContain(plain, Devices);
    });

    [Theory]
    [InlineData("Hält", "halt")]
    [InlineData("Ha\u0308lt", "halt")]
    [InlineData("Żółć", "zolc")]
    [InlineData("Z\u0307o\u0301łc\u0301", "zolc")]
    [InlineData("Smørrebrød", "smorrebrod")]
    [InlineData("Straße", "strasse")]
    [InlineData("Ærø", "aero")]
    [InlineData("Việt Trì", "viet-tri")]
    [InlineData("Vie\u0323\u0302t Tri\u0300", "viet-tri")]
    [InlineData("İstanbul", "istanbul")]
    [InlineData("Ελλάδα", "ellada")]
    [InlineData("Москва", "moskva")]
    [InlineData("Ｕｐ", "up")]
    [InlineData("up side", "up-side")]
    [InlineData("con", "con-1")]
    [InlineData("LPT1", "lpt1-1")]
    [InlineData("北駅", "platform")]
    public void Accents_fall_away_and_other_letters_are_written_in_plain_ones(string name, string plain) => Assert.Equal(plain, FileNames.Plain(name));

    [Fact]
    public void Composed_and_decomposed_letters_are_one_text()
    {
        // Held against the runtime's own tables, where it has them: in this process it has.
        for (int c = 0xC0; c < 0x2000; c++)
        {
            string whole = ((char)c).ToString();
            if (char.IsLetter((char)c) && whole.Normalize(System.Text.NormalizationForm.FormC) == whole
                && whole.Normalize(System.Text.NormalizationForm.FormD) is { Length: > 1 } parts
                && c is < 0x250 or (>= 0x370 and < 0x500) or >= 0x1E00)
            {
                Assert.Equal(whole, ComposedLetters.Of(parts));
                Assert.Equal(parts[0], ComposedLetters.Bare((char)c));
            }
        }
    }

    [Fact]
    public void Names_that_would_give_one_file_are_told_apart()
    {
        var names = FileNames.Distinct(["Up", "up", "UP!", "up below", "up near", "up-2", "Hält", "halt", "Ha\u0308lt"]);
        var files = names.SelectMany(n => new[] { FileNames.Picture(n), FileNames.PictureFromBelow(n), FileNames.PictureFromNear(n) })
            .Concat(names.SelectMany(n => new[] { FileNames.Section(n, 1), FileNames.Plate(n, 1), FileNames.AllPlates(n) })).ToArray();
        Assert.Equal(files.Length, files.Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    // What an island has of its own for each of its tracks, and what other platforms are named like.
    [Property(MaxTest = 200)]
    public void No_two_platforms_write_one_file(int seed)
    {
        var random = new Random(seed);
        string[] words = ["island", "up", "Up!", "down", "below", "near", "gaps", "2", "island-up", "island up below", "con", "\u00e9"];
        string Word() => string.Join(random.Next(2) == 0 ? "-" : " ", Enumerable.Range(0, 1 + random.Next(2)).Select(_ => words[random.Next(words.Length)]));
        (string Name, IReadOnlyList<string> Tracks)[] platforms =
            [.. Enumerable.Range(0, 2 + random.Next(6)).Select(_ => (Word(), (IReadOnlyList<string>)(random.Next(2) == 0 ? [] : [Word(), Word() + "'"])))];
        string[] files = [.. FileNames.Distinct(platforms).Zip(platforms).SelectMany(p => Files(p.First, p.Second.Tracks))];
        Assert.Equal(files.Length, files.Distinct(StringComparer.OrdinalIgnoreCase).Count());

        static IEnumerable<string> Files(string name, IReadOnlyList<string> tracks) =>
        [
            FileNames.Picture(name), FileNames.PictureFromBelow(name), FileNames.PictureFromNear(name),
            FileNames.Section(name, 1), FileNames.Plate(name, 1), FileNames.AllPlates(name),
            .. (tracks.Count == 0 ? [name] : FileNames.Beside(name, tracks))
            .SelectMany(n => new[] { $"tables/{n}-gaps.csv", $"tables/{n}-gaps-by-style.csv", $"drawings/{n}-plan.svg" }),
            $"tables/{name}-sections.csv",
        ];
    }

    [Fact]
    public void The_tool_writes_the_same_with_culture_data_and_without()
    {
        // In this process cultures are known; the tool as it is packed runs without them.
        using var folder = new Cli.TempFolder();
        string project = folder.Write("halt.toml", Projects.Samples.Small.Replace("\"halt\"", "\"Ha\u0308lt am İsar-See\"")
            .Replace("\"main\"", "\"Strecke ö\""));
        var here = Cli.CliRun.Of("build", project, "--no-pictures", "--output", folder["here"]);
        Assert.True(here.Exit == 0, here.Error);
        var start = new ProcessStartInfo("dotnet") { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string word in new[] { "exec", Path.Combine(AppContext.BaseDirectory, "PlatformForge.Cli.dll"), "build", project, "--no-pictures", "--output",
            folder["there"] })
        {
            start.ArgumentList.Add(word);
        }

        start.Environment["LC_ALL"] = "tr_TR.UTF-8";
        using var run = Process.Start(start)!;
        string error = run.StandardError.ReadToEnd();
        run.WaitForExit();
        Assert.True(run.ExitCode == 0, error);
        Assert.Equal(folder.Listing("here"), folder.Listing("there"));
        Assert.Contains(folder.Listing("here"), f => f.StartsWith("stl/halt-am-isar-see-01.stl ", StringComparison.Ordinal));
        Assert.Contains("H\u00E4lt am İsar-See", File.ReadAllText(folder["here/report.md"]), StringComparison.Ordinal);
    }
}
