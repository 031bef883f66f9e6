using System.Reflection;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace PlatformForge.Mutants;

/// <summary>Runs tests in this process one at a time; a theory, and all cases of a property, are one test.</summary>
internal sealed class TestRun : IDisposable
{
    private readonly XunitTestFramework framework = new(new NullMessageSink());
    private readonly Assembly tests = Assembly.Load("PlatformForge.Tests");
    private readonly Options options = new();

    // A failing assertion switches the mutant off: a property that has failed looks for smaller cases, which then all pass at once.
    private bool asserted;

    // Cases of a class by method; classes are looked through when one of their tests is first asked for.
    private readonly Dictionary<string, ILookup<string, ITestCase>> classes = new(StringComparer.Ordinal);

    public TestRun()
    {
        AppDomain.CurrentDomain.FirstChanceException += (_, thrown) =>
        {
            if (!asserted && Switch.Active != Switch.Off && thrown.Exception is XunitException)
            {
                asserted = true;
                Switch.Active = Switch.Off;
            }
        };
    }

    /// <summary>Names of all tests, class and method.</summary>
    public IEnumerable<string> All() => Found(d => d.Find).Select(Name).Distinct(StringComparer.Ordinal);

    /// <summary>Runs one test with one mutant on, from what is worked out once anew.</summary>
    /// <returns>What the test said when it failed; null when it passed. And its seconds of processor.</returns>
    public (string? Failed, double Seconds) Run(string test, int mutant)
    {
        var before = Environment.CpuUsage.TotalTime;
        asserted = false;
        string? failed = Once(test, mutant);
        if (failed is null && asserted)
        {
            failed = Once(test, mutant); // a test that expects an assertion to fail: the mutant stays on this time
        }

        return (failed, (Environment.CpuUsage.TotalTime - before).TotalSeconds);
    }

    private string? Once(string test, int mutant)
    {
        LazyFields.Forget();
        Switch.Active = mutant;
        var heard = new Heard();
        using var executor = framework.GetExecutor(tests.GetName());
        executor.RunTests(CasesOf(test), heard, options);
        heard.Done.Wait();
        Switch.Active = Switch.Off;
        return heard.Failed;
    }

    private IEnumerable<ITestCase> CasesOf(string test)
    {
        string type = test[..test.LastIndexOf('.')];
        if (!classes.TryGetValue(type, out var cases))
        {
            cases = Found(d => (source, sink, how) => d.Find(type, source, sink, how)).ToLookup(Name, StringComparer.Ordinal);
            classes.Add(type, cases);
        }

        return cases[test];
    }

    private List<ITestCase> Found(Func<ITestFrameworkDiscoverer, Action<bool, IMessageSink, ITestFrameworkDiscoveryOptions>> find)
    {
        var found = new Collected();
        using var discoverer = framework.GetDiscoverer(Reflector.Wrap(tests));
        find(discoverer)(false, found, options);
        found.Done.Wait();
        return found.Cases;
    }

    private static string Name(ITestCase c) => c.TestMethod.TestClass.Class.Name + "." + c.TestMethod.Method.Name;

    public void Dispose() => framework.Dispose();

    private sealed class Heard : IMessageSink
    {
        public ManualResetEventSlim Done { get; } = new();

        public string? Failed { get; private set; }

        public bool OnMessage(IMessageSinkMessage message)
        {
            if (message is ITestFailed failed)
            {
                Failed ??= failed.Messages.FirstOrDefault()?.Split('\n')[0] ?? "";
            }
            else if (message is ITestAssemblyFinished)
            {
                Done.Set();
            }

            return Failed is null;
        }
    }

    private sealed class Collected : IMessageSink
    {
        public List<ITestCase> Cases { get; } = [];

        public ManualResetEventSlim Done { get; } = new();

        public bool OnMessage(IMessageSinkMessage message)
        {
            if (message is ITestCaseDiscoveryMessage found)
            {
                Cases.Add(found.TestCase);
            }
            else if (message is IDiscoveryCompleteMessage)
            {
                Done.Set();
            }

            return true;
        }
    }

    private sealed class Options : ITestFrameworkDiscoveryOptions, ITestFrameworkExecutionOptions
    {
        private readonly Dictionary<string, object?> values = new(StringComparer.Ordinal)
        {
            ["xunit.discovery.PreEnumerateTheories"] = false,
            ["xunit.execution.DisableParallelization"] = true,
            ["xunit.execution.MaxParallelThreads"] = 1,
            ["xunit.execution.StopOnTestFail"] = true,
            ["xunit.execution.SynchronousMessageReporting"] = true,
        };

        public TValue GetValue<TValue>(string name) => values.TryGetValue(name, out object? value) ? (TValue)value! : default!;

        public void SetValue<TValue>(string name, TValue value) => values[name] = value;
    }
}
