using System.Globalization;
using PlatformForge.Exports;
using PlatformForge.Exports.Stl;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Exports;
using PlatformForge.Tests.Projects;
using PlatformForge.Tests.Solids.Kernel;
using Xunit;

namespace PlatformForge.Tests.Cli;

/// <summary>Alone in the process while they run, since a culture is every thread's.</summary>
[CollectionDefinition(nameof(CultureTests), DisableParallelization = true)]
public class AloneWithTheCulture;

/// <summary>
/// Same input, same bytes, whatever the machine's culture. The cultures are made here, odder than any real one and the same on every machine, with culture data
/// installed or not: numbers with another point, another minus, groups, other digits' names for what is not a number; dates of another order. The Turkish one,
/// whose small i has no dot when raised, is taken from the machine where it has it.
/// </summary>
[Collection(nameof(CultureTests))]
public class CultureTests
{

    public static TheoryData<string> Cultures() => ["comma", "signs", "tr-TR"];

    [Theory]
    [MemberData(nameof(Cultures))]
    public void A_number_is_written_otherwise_in_a_culture_of_these_tests(string name) => Under(name, () =>
    {
        // What the comparison of bytes below would see if anything in the program asked the culture.
        static string Said(CultureInfo culture) => (-1234.5).ToString("N1", culture) + 0.25.ToString(culture) + 0.5.ToString("P0", culture)
            + new DateTime(2026, 11, 25).ToString("d", culture);
        Assert.NotEqual(Said(CultureInfo.InvariantCulture), Said(CultureInfo.CurrentCulture));
        Assert.NotEqual(Said(CultureInfo.InvariantCulture), Task.Run(() => Said(CultureInfo.CurrentCulture)).GetAwaiter().GetResult());
        return 0;
    });

    [Theory]
    [MemberData(nameof(Cultures))]
    public void A_whole_build_and_all_that_is_said_of_it_are_the_same(string name)
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small.Replace("to = 540 }\n", "to = 540 }\nramps = { start = { length = 60 } }\n")
            .Replace("width = 34\n", "width = 34\nsill = { height = 13 }\n"));
        string bad = folder.Write("bad.toml", Samples.With(13, "running = \"1/4 in\"").Replace("width = 34", "width = 340"));
        string[] Said(string into) =>
        [
            .. new[]
            {
                CliRun.Of("build", file, "--no-pictures", "-o", folder[into]), CliRun.Of("verify", folder[into]), CliRun.Of("check", file, "--at", "400.5"),
                CliRun.Of("check", file, "--json"),
                CliRun.Of("check", bad), CliRun.Of("presets", "scales"),
            }.Select(r => r.Exit + r.Out.Replace(folder[into], "out", StringComparison.Ordinal) + r.Error),
        ];
        string[] plain = Said("plain"), odd = Under(name, () => Said("odd"));
        Assert.Equal(plain, odd);
        Assert.Equal(folder.Listing("plain"), folder.Listing("odd"));
        Assert.True(folder.Listing("plain").Count > 12);
    }

    [Theory]
    [MemberData(nameof(Cultures))]
    public void Every_file_of_a_curved_platform_is_the_same(string name)
    {
        var plain = OutputFiles.Of(HandDossier.Pendlewick(), new() { PictureWidth = 160 });
        var odd = Under(name, () => OutputFiles.Of(HandDossier.Pendlewick(), new() { PictureWidth = 160 }));
        Assert.Equal(plain.Files.Select(f => f.Path), odd.Files.Select(f => f.Path));
        Assert.All(plain.Files.Zip(odd.Files), f => Assert.True(f.First.Bytes.AsSpan().SequenceEqual(f.Second.Bytes), $"{f.First.Path} differs"));
    }

    [Theory]
    [MemberData(nameof(Cultures))]
    public void A_mesh_and_its_file_are_the_same(string name)
    {
        static byte[][] Raised() =>
            [.. Enumerable.Range(0, 12)
                .Select(seed => StlWriter.ToBytes(SolidRaiser.Raise(RandomBlocks.From(seed)).Mesh, FormattableString.Invariant($"block {seed}")))];
        byte[][] plain = Raised(), odd = Under(name, () => Task.Run(Raised).GetAwaiter().GetResult());
        Assert.All(plain.Zip(odd), p => Assert.True(p.First.AsSpan().SequenceEqual(p.Second)));
    }

    // Runs something with a culture in force in this thread and in those that it starts.
    private static T Under<T>(string name, Func<T> run)
    {
        var (before, shown) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.DefaultThreadCurrentUICulture =
            Made(name);
        try
        {
            return run();
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (before, shown);
            CultureInfo.DefaultThreadCurrentCulture = CultureInfo.DefaultThreadCurrentUICulture = null;
        }
    }

    private static CultureInfo Made(string name)
    {
        var made = (CultureInfo)(Machine(name) ?? CultureInfo.InvariantCulture).Clone();
        made.DateTimeFormat.ShortDatePattern = "dd'.'MM'.'yyyy";
        made.NumberFormat.NumberDecimalSeparator = made.NumberFormat.PercentDecimalSeparator = ",";
        made.NumberFormat.NumberGroupSeparator = "\u00a0";
        if (name == "signs")
        {
            made.NumberFormat.NegativeSign = "\u2212";
            made.NumberFormat.PositiveSign = "plus ";
            made.NumberFormat.NumberDecimalSeparator = "\u066b";
            made.NumberFormat.NumberNegativePattern = 3;
            (made.NumberFormat.NaNSymbol, made.NumberFormat.PositiveInfinitySymbol) = ("keine", "viel");
        }

        return made;
    }

    private static CultureInfo? Machine(string name)
    {
        try
        {
            return name.Contains('-', StringComparison.Ordinal) ? CultureInfo.GetCultureInfo(name) : null;
        }
        catch (CultureNotFoundException)
        {
            return null;
        }
    }
}
