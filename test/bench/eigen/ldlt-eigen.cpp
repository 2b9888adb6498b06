// Factors a matrix with Eigen's SimplicialLDLT (AMD ordering), once for every line on standard input.
// usage: ldlt-eigen FILE    FILE: int32 size, int32 entries, columnStart, row (int32), values, rhs (float64)
// answer: one line of JSON per factorisation, {"factorMs", "solveMs", "analyseMs", "residual"}
#include <Eigen/Sparse>
#include <Eigen/SparseCholesky>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <iostream>
#include <string>
#include <vector>

template <typename T> std::vector<T> read(FILE *file, size_t count) {
  std::vector<T> items(count);
  if (std::fread(items.data(), sizeof(T), count, file) != count) std::exit(2);
  return items;
}

double milliseconds() {
  using namespace std::chrono;
  return duration<double, std::milli>(steady_clock::now().time_since_epoch()).count();
}

int main(int, char **arguments) {
  FILE *file = std::fopen(arguments[1], "rb");
  if (!file) return 2;
  const auto head = read<int32_t>(file, 2);
  const auto start = read<int32_t>(file, head[0] + 1);
  const auto row = read<int32_t>(file, head[1]);
  const auto values = read<double>(file, head[1]);
  const auto right = read<double>(file, head[0]);
  std::fclose(file);

  using Matrix = Eigen::SparseMatrix<double>;
  const Matrix lower = Eigen::Map<const Matrix>(head[0], head[0], head[1], start.data(), row.data(), values.data());
  const Eigen::Map<const Eigen::VectorXd> rhs(right.data(), head[0]);

  Eigen::SimplicialLDLT<Matrix, Eigen::Lower> ldlt;
  const double begin = milliseconds();
  ldlt.analyzePattern(lower);
  const double analyseMs = milliseconds() - begin;
  Eigen::VectorXd x(head[0]);
  for (std::string line; std::getline(std::cin, line);) {
    ldlt.factorize(lower);  // warms the caches, as on the other side
    const double t0 = milliseconds();
    ldlt.factorize(lower);
    const double t1 = milliseconds();
    if (ldlt.info() != Eigen::Success) return 3;
    x = ldlt.solve(rhs);
    const double t2 = milliseconds();
    const double residual = (lower.selfadjointView<Eigen::Lower>() * x - rhs).cwiseAbs().maxCoeff();
    std::printf("{\"factorMs\":%.4f,\"solveMs\":%.4f,\"analyseMs\":%.4f,\"residual\":%.3e}\n", t1 - t0, t2 - t1,
                analyseMs, residual);
    std::fflush(stdout);
  }
}
