using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace PlatformForge.Mutants;

/// <summary>The library with every chosen mutant compiled in, so that one build serves them all.</summary>
internal static class MutatedLibrary
{
    private static readonly CSharpParseOptions Parse = new(LanguageVersion.Preview);

    /// <summary>The library as it stands, ready to be asked for types.</summary>
    public static CSharpCompilation Plain(string library)
    {
        string made = Path.Combine(library, "obj", "Release", "net10.0");
        var files = Directory.EnumerateFiles(library, "*.cs", SearchOption.AllDirectories)
            .Where(f => !Path.GetRelativePath(library, f).StartsWith("obj", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Concat(Directory.EnumerateFiles(made, "*.g.cs", SearchOption.AllDirectories))
            .Append(Path.Combine(made, "PlatformForge.AssemblyInfo.cs"));
        var trees = files.Select(f => CSharpSyntaxTree.ParseText(SourceText.From(File.ReadAllText(f), System.Text.Encoding.UTF8), Parse, f));
        string here = AppContext.BaseDirectory;
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(p => Path.GetFileName(p) is not ("PlatformForge.dll" or "PlatformForge.Cli.dll" or "PlatformForge.Tests.dll" or "PlatformForge.Mutants.dll"))
            .Where(p => !p.StartsWith(here, StringComparison.Ordinal) || Path.GetFileName(p) is "Tomlyn.dll" or "NetTopologySuite.dll")
            .Select(p => (MetadataReference)MetadataReference.CreateFromFile(p));
        return CSharpCompilation.Create("PlatformForge", trees, references, new(
            OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable,
            deterministic: true));
    }

    /// <summary>
    /// Writes the library with the first <paramref name="count"/> mutants of each room that compile; tells which they are. One that does not compile
    /// is left out and the next in the order takes its place.
    /// </summary>
    public static List<Mutant> Write(CSharpCompilation plain, IReadOnlyList<List<Mutant>> rooms, int count, string to)
    {
        var bad = new HashSet<string>(StringComparer.Ordinal);
        for (int round = 0; round < 50; round++)
        {
            List<Mutant> chosen = [.. rooms.SelectMany(room => room.Where(m => !bad.Contains(m.Key)).Take(count)).Select((m, i) => m with { Id = i })];
            var compilation = Switched(plain, chosen);
            using var file = File.Create(to);
            var result = compilation.Emit(file, manifestResources: Resources());
            if (result.Success)
            {
                return chosen;
            }

            var errors = result.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error).ToList();
            int before = bad.Count;
            foreach (int id in errors.SelectMany(e => Blamed(e, chosen)))
            {
                bad.Add(chosen[id].Key);
            }

            if (bad.Count == before)
            {
                throw new InvalidOperationException("The library does not compile, whatever mutant is left out: " + errors[0]);
            }
        }

        throw new InvalidOperationException("Too many mutants do not compile.");
    }

    private static CSharpCompilation Switched(CSharpCompilation plain, List<Mutant> chosen)
    {
        var compilation = plain.AddSyntaxTrees(CSharpSyntaxTree.ParseText("#nullable enable\n" + SwitchWriter.Source, Parse,
            encoding: System.Text.Encoding.UTF8));
        foreach (var file in chosen.GroupBy(m => m.Node.SyntaxTree))
        {
            var byNode = file.GroupBy(m => m.Node).ToDictionary(g => g.Key, g => g.ToList());
            string text = new SwitchWriter(byNode).Visit(file.Key.GetRoot())!.ToFullString();
            compilation = compilation.ReplaceSyntaxTree(file.Key,
                CSharpSyntaxTree.ParseText(SourceText.From(text, System.Text.Encoding.UTF8), Parse, file.Key.FilePath));
        }

        return compilation;
    }

    // The switches of the smallest piece of code round the error that has any.
    private static IEnumerable<int> Blamed(Diagnostic error, List<Mutant> chosen)
    {
        if (error.Location.SourceTree is not { } tree)
        {
            yield break;
        }

        var place = tree.GetRoot().FindNode(error.Location.SourceSpan, getInnermostNodeForTie: true);
        var around = place.AncestorsAndSelf().FirstOrDefault(n => n.ToString().Contains("MutantSwitch.On(", StringComparison.Ordinal));
        if (around is not (null or TypeDeclarationSyntax or BaseNamespaceDeclarationSyntax or CompilationUnitSyntax))
        {
            foreach (Match match in Regex.Matches(around.ToString(), @"MutantSwitch\.On\((\d+)\)", RegexOptions.None, TimeSpan.FromSeconds(5)))
            {
                yield return int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);
            }
        }

        // A constant that something else has to know when it is compiled.
        string text = place.FirstAncestorOrSelf<MemberDeclarationSyntax>()?.ToString() ?? "";
        foreach (var constant in chosen.Where(m => m.Shape == Shape.Constant && text.Contains(m.Member, StringComparison.Ordinal)))
        {
            yield return constant.Id;
        }
    }

    private static IEnumerable<ResourceDescription> Resources()
    {
        var library = Assembly.LoadFrom(Path.Combine(AppContext.BaseDirectory, "PlatformForge.dll"));
        return library.GetManifestResourceNames().Select(name => new ResourceDescription(name, () => library.GetManifestResourceStream(name)!, isPublic: true));
    }
}
