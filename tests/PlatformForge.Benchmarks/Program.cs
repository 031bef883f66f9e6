using System.Globalization;
using PlatformForge.Benchmarks;
using PlatformForge.Benchmarks.Ahead;
using PlatformForge.Exports.Stl;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Meshes;

// dotnet run -c Release --project tests/PlatformForge.Benchmarks [-- <folder of the peers> | kernel [REPEATS] | masonry [long | spread [REPEATS] | edits
// [REPEATS [PART OF AN EDIT]]] | envelope | survey | doubt | honesty | joints | scale FOLDER | sets ... | ahead ... | session ... | starts [PIECE PIECES] |
// hostile [SEED [COUNT [few]]] | designs --count N --seed FIRST --report FILE --verify N --halts]
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args is ["envelope"])
{
    EnvelopeRuns.Report();
    return 0;
}

if (args is ["kernel", ..])
{
    KernelRuns.Report(args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 400);
    return 0;
}

if (args is ["masonry", "spread", ..])
{
    MasonryRuns.Spread(args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 300);
    return 0;
}

if (args is ["masonry", "long"])
{
    MasonryRuns.Long();
    return 0;
}

if (args is ["masonry", "edits", ..])
{
    MasonryRuns.Edits(args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 20, args.Length > 3 ? args[3] : "");
    return 0;
}

if (args is ["masonry"])
{
    MasonryRuns.Report();
    return 0;
}

if (args is ["starts", ..])
{
    // starts [PIECE PIECES]
    return StartRuns.Report(args.Length > 2 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1,
        args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 1) == 0 ? 0 : 1;
}

if (args is ["designs", ..])
{
    return DesignRuns.Report(args[1..]);
}

if (args is ["hostile", ..])
{
    int seed = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1, count = args.Length > 2
        ? int.Parse(args[2], CultureInfo.InvariantCulture) : 1000;
    return HostileRuns.Report(seed, count, few: args is [.., "few"]) == 0 ? 0 : 1;
}

if (args is ["session", ..])
{
    // session [REPEATS] | session files [REPEATS] | session law [COUNT [SEED [SECONDS]]] | session cold PlatformForge.Cli.dll PROJECT [REPEATS]
    int At(int i, int otherwise) => args.Length > i ? int.Parse(args[i], CultureInfo.InvariantCulture) : otherwise;
    switch (args)
    {
        case [_, "law", ..]:
            return SessionRuns.Law(At(2, 100), At(3, 1), At(4, int.MaxValue)) == 0 ? 0 : 1;
        case [_, "files", ..]:
            SessionRuns.Files(At(2, 20));
            return 0;
        case [_, "cold", var program, var project, ..]:
            ColdRuns.Report(program, project, At(4, 9));
            return 0;
        default:
            SessionRuns.Report(At(1, 40));
            return 0;
    }
}

if (args is ["sets", var cli, var sample, ..])
{
    // sets PlatformForge.Cli.dll PROJECT [REPEATS]
    SetRuns.Report(cli, sample, args.Length > 3 ? int.Parse(args[3], CultureInfo.InvariantCulture) : 5);
    return 0;
}

if (args is ["ahead", var ordinary, var methods, ..])
{
    // ahead PlatformForge.Cli.dll src/PlatformForge.Cli/Ahead/methods.mibc PROJECT ...
    AheadRuns.Write(ordinary, methods, args[3..]);
    return 0;
}

if (args is ["scale", "run", var packed, ..])
{
    // scale run PlatformForge.Cli.dll [PART OF THE PROJECT'S NAME]
    return ScaleRuns.Report(packed, args.Length > 3 ? args[3] : "") == 0 ? 0 : 1;
}

if (args is ["scale", var folder])
{
    ScaleProjects.Write(folder);
    return 0;
}

if (args is ["doubt"])
{
    DoubtRuns.Report();
    return 0;
}

if (args is ["honesty"])
{
    HonestyRuns.Report();
    return 0;
}

if (args is ["honesty", var truth, ..])
{
    // honesty TRUTH [SPACING [ERROR [SEED [SURVEYS]]]]: one row.
    double Figure(int i, double otherwise) => args.Length > i ? double.Parse(args[i], CultureInfo.InvariantCulture) : otherwise;
    HonestyRuns.Report(truth, Figure(2, 100), Figure(3, 0.25), (int)Figure(4, 880_000), (int)Figure(5, 100));
    return 0;
}

if (args is ["joints", ..])
{
    // joints [OFF [SPACING [SEED [SURVEYS [noradii]]]]]
    double Figure(int i, double otherwise) => args.Length > i ? double.Parse(args[i], CultureInfo.InvariantCulture) : otherwise;
    JointRuns.Report(Figure(1, 45), Figure(2, 50), (int)Figure(3, 880_000), (int)Figure(4, 40), args is not [.., "noradii"]);
    return 0;
}

if (args is ["survey"])
{
    SurveyRuns.Report();
    return 0;
}

string? peers = args.FirstOrDefault() ?? Environment.GetEnvironmentVariable("PLATFORMFORGE_PEERS");
const double degree = Math.PI / 180;

Console.WriteLine("solid                         median ms   least ms    limit   peer ms  ratio  triangles       volume  sound");
foreach (bool brick in new[] { false, true })
{
    var blocks = ReferenceSection.Blocks(brick);
    var solid = SolidRaiser.Raise(blocks);
    var timing = Timing.Of(() => SolidRaiser.Raise(blocks), brick ? 60 : 300);
    Report(brick ? "B2 brick section" : "B1 plain section", timing, brick ? 6 : 1.5, brick ? "B2" : "B1", solid);
}

var row = Enumerable.Range(0, 10).Select(i => ReferenceSection.Blocks(brick: true, ReferenceSection.Angle * i)).ToArray();
var files = new byte[row.Length][];
var raised = new Solid[row.Length];
Report("B3 ten brick sections, STL", Timing.Of(() => Parallel.For(0, row.Length, Write), 9), 45, "B3", raised);
Report("B3 on one thread", Timing.Of(() => Array.ForEach([.. Enumerable.Range(0, row.Length)], Write), 9), 90, null, raised);

Console.WriteLine();
Console.WriteLine("growth: plain sections in one solid, ms a section");
foreach (int count in new[] { 1, 2, 4, 8, 12 })
{
    var blocks = Enumerable.Range(0, count).SelectMany(i => ReferenceSection.Blocks(brick: false, 29 * degree * i)).ToArray();
    var timing = Timing.Of(() => SolidRaiser.Raise(blocks), 30);
    Console.WriteLine($"{count,4}  {timing.Median / count,8:F2}  least {timing.Least / count,8:F2}");
}

EnvelopeRuns.Report();
SurveyRuns.Report();
DoubtRuns.Report();
return 0;

void Write(int i)
{
    raised[i] = SolidRaiser.Raise(row[i]);
    files[i] = StlWriter.ToBytes(raised[i].Mesh, "benchmark", threads: 1);
}

void Report(string name, Timing timing, double limit, string? peer, params Solid[] solids)
{
    double? other = peer is null ? null : Peers.ModelAndBytes(peers, peer, peer == "B3" ? 3 : 9);
    string versus = other is { } ms ? $"{ms,8:F1}  {ms / timing.Median,5:F1}" : "       -      -";
    bool sound = solids.All(s => MeshCheck.Inspect(s.Mesh).IsSound);
    Console.WriteLine(
        $"{name,-28} {timing.Median,10:F2} {timing.Least,10:F2} {limit,8:F1}  {versus} "
            + $" {solids.Sum(s => s.Mesh.TriangleCount),9} {solids.Sum(s => s.ColumnVolume),12:F2}  {sound}");
}
